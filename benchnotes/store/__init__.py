"""One SQLite file through sqlite-utils: keeps facts only, derives nothing."""
