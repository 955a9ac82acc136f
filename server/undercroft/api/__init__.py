"""HTTP: `create_app` makes the Flask application."""

from undercroft.api.app import create_app

__all__ = ["create_app"]
