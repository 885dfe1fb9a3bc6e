"""The steps of the fold, one list of the record each. Pure: talk and record so far in, record out."""
