"""QR codes as pictures for the desk."""

import io

import segno


def svg_of(text: str) -> str:
    """An SVG picture without colours of its own, a quiet zone of four modules around it."""
    picture = io.BytesIO()
    segno.make(text, error="m").save(picture, kind="svg", scale=4, border=4, light="#fff")
    return picture.getvalue().decode("utf-8")
