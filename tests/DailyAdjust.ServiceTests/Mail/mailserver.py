"""An SMTP server for the tests (Debian's python3-aiosmtpd) that fails as it is told.

    mailserver.py FOLDER [--port N] [--cert FILE --key FILE] [--tls] [--user NAME --password TEXT]

Prints "port N". Every connection takes the next line of FOLDER/modes, the last line stays: what it does then is written beside
each name below. Messages that it takes lie in FOLDER as 001.eml, 002.eml, ...; FOLDER/events has a line for what happened.
"""
import argparse
import asyncio
import pathlib
import ssl

from aiosmtpd.smtp import SMTP, AuthResult, LoginPassword

parser = argparse.ArgumentParser()
parser.add_argument("folder", type=pathlib.Path)
parser.add_argument("--port", type=int, default=0)
parser.add_argument("--cert")
parser.add_argument("--key")
parser.add_argument("--tls", action="store_true")
parser.add_argument("--user")
parser.add_argument("--password")
given = parser.parse_args()


def tell(event):
    with open(given.folder / "events", "a") as events:
        events.write(event + "\n")


def next_mode():
    path = given.folder / "modes"
    lines = path.read_text().split() if path.exists() else ["ok"]
    if len(lines) > 1:
        path.write_text("\n".join(lines[1:]))
    return lines[0]


class Server(SMTP):
    mode = None

    def connection_made(self, transport):
        # After STARTTLS it is called again, for the same connection.
        if self.mode is None:
            self.mode = next_mode()
            tell("connected " + self.mode)
        if self.mode == "drop-connect":  # closes the line before a word
            transport.abort()
            return
        super().connection_made(transport)

    async def _handle_client(self):
        if self.mode == "hang":  # never says a word
            await asyncio.sleep(3600)
        await super()._handle_client()

    async def smtp_DATA(self, arg):
        if self.mode == "drop-data":  # closes the line in the middle of the text
            await self.push("354 go on")
            await self._reader.readexactly(3000)
            tell("dropped in the text")
            self.transport.abort()
            return
        await super().smtp_DATA(arg)


class Handler:
    async def handle_RCPT(self, server, session, envelope, address, options):
        if server.mode == "drop-rcpt":  # closes the line before the text
            server.transport.abort()
        if server.mode == "hold-rcpt":  # says nothing to the recipient
            tell("holding before the text")
            await asyncio.sleep(3600)
        if server.mode == "550":  # refuses the recipient for ever
            return "550 5.1.1 nobody\tof that name here"
        if server.mode == "450":  # refuses the recipient for now
            return "450 4.2.1 come back later"
        envelope.rcpt_tos.append(address)
        return "250 OK"

    async def handle_DATA(self, server, session, envelope):
        if server.mode == "554":  # refuses the text
            return "554 5.6.0 not such a text"
        if server.mode == "lost":  # closes the line after the text, which it has not kept
            server.transport.abort()
            return "250 never said"
        count = len(list(given.folder.glob("*.eml"))) + 1
        # Whoever waits for the message sees it whole or not at all.
        half = given.folder / f"{count:03}.half"
        half.write_bytes(
            f"X-From: {envelope.mail_from}\r\nX-To: {','.join(envelope.rcpt_tos)}\r\n".encode() + envelope.original_content)
        half.rename(given.folder / f"{count:03}.eml")
        tell("taken")
        if server.mode == "drop-after":  # keeps the message and closes the line before it says so
            server.transport.abort()
        if server.mode == "hold-after":  # keeps the message and never says so
            await asyncio.sleep(3600)
        return "250 taken as " + str(count)


def login(server, session, envelope, mechanism, data):
    right = isinstance(data, LoginPassword) and (data.login, data.password) == (given.user.encode(), given.password.encode())
    tell("login " + ("right" if right else "wrong"))
    # A server that repeats what it was sent.
    return AuthResult(success=right, handled=False, message=None if right else "535 5.7.8 wrong: " + data.password.decode())


def server():
    secure = None
    if given.cert and not given.tls:
        secure = context()
    return Server(
        Handler(), hostname="mail.example.net", tls_context=secure, require_starttls=secure is not None,
        authenticator=login if given.user else None, auth_required=given.user is not None, auth_require_tls=secure is not None)


def context():
    made = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    made.load_cert_chain(given.cert, given.key)
    return made


async def main():
    listening = await asyncio.get_running_loop().create_server(
        server, "127.0.0.1", given.port, ssl=context() if given.tls else None)
    print("port", listening.sockets[0].getsockname()[1], flush=True)
    await listening.serve_forever()


asyncio.run(main())
