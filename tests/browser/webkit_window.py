"""A window with WebKit in it and nothing else, run by Debian's Python for the driver to open.

Takes the folder for what the pages keep, the width, the height and the light. The driver's own
browser forgets everything when it ends and is as large as it likes.
"""

import sys
from pathlib import Path

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")

from gi.repository import Gtk, WebKit2  # noqa: E402  the versions have to be named first


def dress(light: str) -> None:
    """Reduced motion, and the light that pages are told the person prefers: "dark" or "light"."""
    look = Gtk.Settings.get_default()
    look.set_property("gtk-enable-animations", False)
    look.set_property("gtk-application-prefer-dark-theme", light == "dark")


def context_that_keeps(folder: str) -> WebKit2.WebContext:
    """Its pages keep what they store in the folder, cookies too, and the driver may steer them."""
    kept = WebKit2.WebsiteDataManager(base_data_directory=folder, base_cache_directory=folder)
    context = WebKit2.WebContext(website_data_manager=kept)
    context.set_preferred_languages(["en-GB"])
    context.set_automation_allowed(True)
    kept_cookies = str(Path(folder) / "cookies.sqlite3")
    context.get_cookie_manager().set_persistent_storage(
        kept_cookies, WebKit2.CookiePersistentStorage.SQLITE
    )
    return context


def steered_view(context: WebKit2.WebContext) -> WebKit2.WebView:
    """The one view, which the driver gets whenever it asks for a new one."""
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    view.get_settings().set_enable_write_console_messages_to_stdout(True)

    def give(_: WebKit2.WebContext, session: WebKit2.AutomationSession) -> None:
        session.connect("create-web-view", lambda _: view)

    context.connect("automation-started", give)
    return view


def main(folder: str, width: str, height: str, light: str) -> None:
    dress(light)
    window = Gtk.Window(decorated=False)
    window.set_default_size(int(width), int(height))
    window.add(steered_view(context_that_keeps(folder)))
    window.connect("destroy", Gtk.main_quit)
    window.show_all()
    Gtk.main()


if __name__ == "__main__":
    main(*sys.argv[1:])
