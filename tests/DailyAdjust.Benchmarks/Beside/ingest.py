"""ingest.py FILE LEDGER: a weather file into SQLite with pandas, its times read as times."""
import sqlite3
import sys

import pandas

frame = pandas.read_csv(sys.argv[1], parse_dates=['Time'])
ledger = sqlite3.connect(sys.argv[2])
frame.to_sql('readings', ledger, index=False)
ledger.commit()
