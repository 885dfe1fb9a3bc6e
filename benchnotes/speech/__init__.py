"""Sound becomes utterances; what nobody could read is listed as unheard."""
