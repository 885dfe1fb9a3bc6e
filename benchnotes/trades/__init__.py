"""The words of each trade, as data, and the files that read them."""
