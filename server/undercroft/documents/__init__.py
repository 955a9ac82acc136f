"""Documents as people and programs exchange them, and the typed objects that they become."""
