"""Currencies and how many digits follow their point: ISO 4217, list one (active codes), as published January 2026."""

from __future__ import annotations

from decimal import Decimal

from benchnotes.record.money import Money

_BY_DIGITS = {
    0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
    2: """
        AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW
        CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF
        IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK
        MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP
        SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG
        YER ZAR ZMW ZWG
    """,
    3: "BHD IQD JOD KWD LYD OMR TND",
    4: "CLF UYW",
}

MINOR_DIGITS: dict[str, int] = {code: digits for digits, codes in _BY_DIGITS.items() for code in codes.split()}
"""Active ISO 4217 code to the digits of its minor unit."""


def plain_amount(money: Money) -> str:
    """The amount as a decimal string with the currency's own digits; more where more were said, never fewer."""
    return plain_decimal(money.amount, MINOR_DIGITS.get(money.currency, 2))


def plain_decimal(value: Decimal, least_digits: int = 0) -> str:
    """No exponent, no zeros at the end beyond `least_digits`."""
    text = f"{value:f}"
    whole, _, tail = text.partition(".")
    tail = tail.rstrip("0").ljust(least_digits, "0")
    return f"{whole}.{tail}" if tail else whole
