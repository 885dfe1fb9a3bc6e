"""How sure a recogniser is of the value of a number, whichever way it might have written it.

"40" and "forty" are one value: a recogniser torn between the two is sure of the number and yet gives neither a high
probability. Torn between "40" and "14" it is not. So the probabilities of all that says the same are added up.
"""

from __future__ import annotations

from collections.abc import Mapping

SPOKEN: Mapping[str, str] = {
    "0": "zero", "1": "one", "2": "two", "3": "three", "4": "four", "5": "five", "6": "six", "7": "seven", "8": "eight",
    "9": "nine", "10": "ten", "11": "eleven", "12": "twelve", "13": "thirteen", "14": "fourteen", "15": "fifteen",
    "16": "sixteen", "17": "seventeen", "18": "eighteen", "19": "nineteen", "20": "twenty", "30": "thirty",
    "40": "forty", "50": "fifty", "60": "sixty", "70": "seventy", "80": "eighty", "90": "ninety", "100": "hundred",
    "1000": "thousand",
}  # fmt: skip
"""English number words of one word."""
OTHERWISE = {"nought": "0", "naught": "0", "oh": "0"}
DIGITS: Mapping[str, str] = {word: digits for digits, word in SPOKEN.items()} | OTHERWISE
BEFORE_DIGITS = frozenset({"", "$", "£", "€", "point"})
"""What may be written before the digits of the same number."""


def says_number(text: str) -> bool:
    """Whether a piece of text has a digit in it or is a number word."""
    return bool(digits_of(text))


def same_value(piece: str, rest: str, *, more: bool = False) -> bool:
    """Whether `piece` says, or begins to say, the number that is written as `rest`; `more`: a number word follows it.

    "forty" for "40", "$" or "4" for "4.50", "3" for "three", "59" for "fifty" before "nine" do; "14" for "40" does not.
    """
    if _plain(piece) in BEFORE_DIGITS and any(c.isdigit() for c in rest):
        return True
    said, wanted = digits_of(piece), digits_of(rest)
    if not said or not wanted:
        return False
    spelled = not any(c.isdigit() for c in piece)
    if wanted.startswith(said) or (spelled and wanted.startswith(said.rstrip("0") or "0")):
        return True
    return more and said.startswith(wanted.rstrip("0") or "0")


def _plain(text: str) -> str:
    return text.strip().strip(".,?!;:'\"()").casefold()


def digits_of(text: str) -> str:
    """The digits that a text writes or spells: "4.50" gives 450, "forty-five" 45, "M6" 6."""
    written = "".join(c for c in text if c.isdigit())
    if written:
        # "0.3" is also said, and written, "point three"
        return written[1:] if _plain(text).lstrip("$£€").startswith("0.") and len(written) > 1 else written
    spelled = [DIGITS[part] for part in _plain(text).split("-") if part in DIGITS]
    if len(spelled) == 2 and spelled[0].endswith("0") and len(spelled[1]) == 1:
        return spelled[0][0] + spelled[1]
    return "".join(spelled)
