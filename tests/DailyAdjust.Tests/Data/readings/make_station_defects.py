"""Writes station-defects.csv beside it: an invented station's export with every defect that the reader must live with.

Run: python3 make_station_defects.py
Each row's rain is told apart by its value, so that a test can say which rows counted.
"""
import os

HEADER = '"Datum/Zeit";"Außen (°F)";Feuchte [%];Wind (mph);Strahlung (ly);Regen (in);Bemerkung'


def rows():
    yield "Stationsexport Nordhof"
    yield 'Seriennummer;4711;"Firmware; neu"'
    yield ""
    yield HEADER                                                            # line 4
    # The night of the spring change: 02:00 was never shown.
    yield '07.03.2026 23:00;41,0;80;5,0;0,0;0,01;'                          # 5
    yield '07.03.2026 24:00;40,1;81;4,0;0,0;0,02;"Mitternacht; als 24:00"'  # 6
    yield '08.03.2026 01:00;39,2;82;"3,5";0,0;0,03;'                        # 7
    yield '08.03.2026 02:00;38,3;83;3,0;0,0;9,99;'                          # 8  skipped hour
    yield '08.03.2026 03:00;38,3;83;3,0;0,0;0,04;'                          # 9
    yield '08.03.2026 04:00;---;84;2,5;0,0;0,05;'                           # 10 missing mark
    yield '08.03.2026 05:00;-999;85;2,0;0,0;0,06;'                          # 11 missing mark that is a number
    yield '08.03.2026 06:00;-999,0;;2,0;0,0;0,07;'                          # 12 the same, written otherwise; empty
    yield '08.03.2026 07:00;37.4;86;2,0;0,5;0,08;'                          # 13 decimal point
    yield '08.03.2026 08:00;39,2;86;1.002,0;1,0;0,09;'                      # 14 mark between thousands
    yield '08.03.2026 09:00;39,2;ERR;2,0;2,0;0,10;'                         # 15 text
    yield '08.03.2026 10:00;NaN;85;2,0;4,0;0,11;'                           # 16 no number
    yield '30.02.2026 11:00;39,2;85;2,0;4,0;9,99;'                          # 17 no such date
    yield '08.03.2026 12:00;39,2;85;2,0;9,99;'                              # 18 a cell short
    yield '08.03.2026 13:00;39,2;85;2,0;4,0;9,99;;7'                        # 19 a cell too many
    yield '08.03.2026 14:00;39,2;85;2,0;4,0;9,99;"offen'                    # 20 quote not closed
    yield '08.03.2026 15:00;39,2;85;2,0\0;4,0;9,99;'                        # 21 NUL
    yield ""                                                                # 22
    yield ";;;;;;"                                                          # 23
    yield '08.03.2026 17:00;50,0;60;2,0;9,0;0,13;'                          # 24
    yield '08.03.2026 16:00;51,8;58;2,0;12,0;0,12;'                         # 25 out of order
    yield '08.03.2026 17:00;51,0;;2,0;9,0;0,14;"berichtigt"'                # 26 the same hour again
    yield '08/03/2026 18:00;50,0;60;2,0;6,0;9,99;'                          # 27 date written otherwise
    # Another month's export put behind it.
    yield HEADER                                                            # 28
    yield '01.11.2026 00:00;50,0;60;2,0;0,0;0,20;'                          # 29
    yield '01.11.2026 01:00;50,0;60;2,0;0,0;0,21;'                          # 30
    yield '01.11.2026 01:00;50,0;60;2,0;0,0;0,22;'                          # 31 the repeated hour
    yield '01.11.2026 02:00;50,0;60;2,0;0,0;0,23;'                          # 32
    yield '01.11.2026 03:00;50,0;60;2,0;0,0;0,2'                            # 33 cut


def main():
    target = os.path.join(os.path.dirname(os.path.abspath(__file__)), "station-defects.csv")
    with open(target, "wb") as out:
        out.write(b"\xef\xbb\xbf" + "\r\n".join(rows()).encode("utf-8"))


main()
