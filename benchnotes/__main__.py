"""`python -m benchnotes`, the same as the command `benchnotes`."""

from benchnotes.commands.main import main

if __name__ == "__main__":
    main()
