"""The PWA's files: worker and index are asked for anew each time, hashed assets never again."""

from pathlib import Path

from flask import Flask, Response, send_from_directory
from werkzeug.exceptions import NotFound
from werkzeug.wrappers import Response as AnyResponse

WEB = Path(__file__).parent.parent / "web"
FRESH = "no-cache"
FILE_ENDINGS = (
    ".css", ".html", ".ico", ".js", ".json", ".map", ".png", ".svg", ".txt", ".webmanifest",
)  # fmt: skip
"""What is surely meant as a file; the key of a session may hold dots as well."""

FOR_EVER = "public, max-age=31536000, immutable"

NOT_BUILT = """Undercroft is running, but its screens are not there: the folder
{folder}
has no index.html.

Installed from a wheel, the screens come with it. From a checkout, build them:
    pip install -e .                 (builds once, brings its own Node)
or  cd pwa && npm ci && npm run build

The API works without them: /api/v1/health, /api/v1/openapi.json
"""


def install(app: Flask, folder: Path = WEB) -> None:
    """Serve the files of `folder`; every other address outside /api/ gets the index."""

    @app.get("/", endpoint="web.page")
    @app.get("/<path:path>", endpoint="web.page")
    def page(path: str = "index.html") -> AnyResponse:
        """A file of the PWA, or its index for an address that only the PWA knows."""
        return _file(folder, path)


def _file(folder: Path, path: str) -> AnyResponse:
    if path == "api" or path.startswith("api/"):
        raise NotFound("There is nothing under this address.")
    if not (folder / "index.html").is_file():
        return Response(NOT_BUILT.format(folder=folder), 503, content_type="text/plain")
    try:
        response = send_from_directory(folder, path, conditional=True)
    except NotFound:
        if path.startswith("assets/") or path.endswith(FILE_ENDINGS):
            raise
        response = send_from_directory(folder, "index.html", conditional=True)
    response.headers["Cache-Control"] = FOR_EVER if path.startswith("assets/") else FRESH
    return response
