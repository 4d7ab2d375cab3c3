"""The page behind nginx, by the file of docs/install: TLS, the real address, limits."""

import shutil
import ssl
import subprocess
import threading
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from time import sleep

import httpx
import pytest
import uvicorn
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import NameOID
from tests.browser.conftest import free_port
from tests.web.desks import Clock, desk_on

from combwright.services.login_tries import TRIES
from combwright.web.app import build
from combwright.web.connections import Punctual

NGINX = shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")
HOST = "bees.example.org"
WORDS = "four unlikely words together"
CONFIG = Path(__file__).parents[2] / "docs" / "install" / "nginx.conf"
AROUND = """
daemon off; pid {room}/pid; error_log {room}/error.log;
events {{}}
http {{ access_log off; client_body_temp_path {room}/a; proxy_temp_path {room}/b;
fastcgi_temp_path {room}/c; uwsgi_temp_path {room}/d; scgi_temp_path {room}/e;
include {room}/site.conf; }}
"""

pytestmark = pytest.mark.skipif(NGINX is None, reason="no nginx here")


def certify(room: Path) -> ssl.SSLContext:
    """Make a certificate for the name, and give what trusts it alone."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, HOST)])
    now = datetime.now(UTC)
    made = (
        x509.CertificateBuilder(name, name, key.public_key(), x509.random_serial_number())
        .not_valid_before(now - timedelta(days=1))
        .not_valid_after(now + timedelta(days=1))
        .add_extension(x509.SubjectAlternativeName([x509.DNSName(HOST)]), critical=False)
        .sign(key, hashes.SHA256())
    )
    text = made.public_bytes(serialization.Encoding.PEM)
    (room / "fullchain.pem").write_bytes(text)
    plain = serialization.NoEncryption()
    pkcs8 = serialization.PrivateFormat.PKCS8
    (room / "privkey.pem").write_bytes(key.private_bytes(serialization.Encoding.PEM, pkcs8, plain))
    return ssl.create_default_context(cadata=text.decode())


@pytest.fixture
def outside(tmp_path: Path) -> Iterator[httpx.Client]:
    """A browser of someone elsewhere, who sees nginx alone."""
    desk = desk_on(tmp_path / "a.book", Clock())
    desk.access.set_passphrase(WORDS)
    config = uvicorn.Config(
        build(desk), port=0, http=Punctual, log_level="critical", proxy_headers=True
    )
    server = uvicorn.Server(config)
    runs = threading.Thread(target=server.run)
    runs.start()
    front = None
    try:
        while not server.started:
            sleep(0.01)
        inner = server.servers[0].sockets[0].getsockname()[1]
        trusting, outer, plain = certify(tmp_path), free_port(), free_port()
        site = CONFIG.read_text("utf-8").replace("443", f"127.0.0.1:{outer}")
        site = site.replace("listen 80;", f"listen 127.0.0.1:{plain};")
        site = site.replace("127.0.0.1:8321", f"127.0.0.1:{inner}")
        site = site.replace(f"/etc/letsencrypt/live/{HOST}", str(tmp_path))
        (tmp_path / "site.conf").write_text(site, "utf-8")
        (tmp_path / "nginx.conf").write_text(AROUND.format(room=tmp_path), "utf-8")
        front = subprocess.Popen(
            [str(NGINX), "-p", tmp_path, "-e", tmp_path / "error.log", "-c", "nginx.conf"]
        )
        with httpx.Client(
            base_url=f"https://{HOST}:{outer}",
            transport=Here({"https": outer, "http": plain}, trusting),
            headers={"Host": HOST},
        ) as client:
            for _ in range(200):
                try:
                    client.get("/health")
                    break
                except httpx.TransportError:
                    sleep(0.05)
            yield client
    finally:
        if front is not None:
            front.terminate()
            front.wait(10)
        server.should_exit = True
        runs.join(10)


class Here(httpx.HTTPTransport):
    """Finds the name at this machine, as a file of hosts would."""

    def __init__(self, ports: dict[str, int], trusting: ssl.SSLContext) -> None:
        super().__init__(verify=trusting)
        self._ports = ports

    def handle_request(self, request: httpx.Request) -> httpx.Response:
        port = self._ports[request.url.scheme]
        request.url = request.url.copy_with(host="127.0.0.1", port=port)
        request.extensions["sni_hostname"] = HOST
        return super().handle_request(request)


def test_the_page_is_reached_by_https_alone_and_knows_who_asks(outside: httpx.Client) -> None:
    assert outside.get("/health").json() == {"status": "well"}
    assert outside.get("/yards").status_code == 401
    answer = outside.post("/login", data={"passphrase": WORDS})
    assert answer.status_code == 303
    assert "__Host-combwright=" in answer.headers["Set-Cookie"]
    assert "Secure" in answer.headers["Set-Cookie"]
    assert "max-age=31536000" in answer.headers["Strict-Transport-Security"]
    led = outside.get(f"http://{HOST}/yards")
    assert (led.status_code, led.headers["Location"]) == (301, f"https://{HOST}/yards")
    for path in ("/api/colonies", "/calendar/key.ics", "/measures"):
        assert outside.get(f"http://{HOST}{path}").status_code == 403
    assert "Server" not in answer.headers or "uvicorn" not in answer.headers["Server"]
    cookie = {"Cookie": answer.headers["Set-Cookie"].split(";")[0]}
    assert outside.get("/yards", headers=cookie).status_code == 200
    large = {"file": ("a.csv", b"x" * 13_000_000)}
    assert outside.post("/book/add", files=large, headers=cookie).status_code == 413
    # who says to be somebody else each time is counted as who they are
    for at in range(TRIES):
        forged = {"X-Forwarded-For": f"203.0.113.{at}"}
        outside.post("/login", data={"passphrase": "wrong wrong wrong"}, headers=forged)
    late = outside.post("/login", data={"passphrase": WORDS}, headers={"X-Forwarded-For": "::9"})
    assert late.status_code == 429
