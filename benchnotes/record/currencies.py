"""Currencies and how many digits follow their point: ISO 4217, list one (active codes), as published January 2026."""

from __future__ import annotations

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


def minor_digits(currency: str) -> int:
    """Digits of a currency's minor unit; two for one that is not listed."""
    return MINOR_DIGITS.get(currency, 2)
