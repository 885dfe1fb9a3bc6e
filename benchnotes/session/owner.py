"""Whose machine it is: noted on the job's card, and who is billed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from benchnotes.exports.countries import COUNTRIES
from benchnotes.exports.invoice import Party
from benchnotes.session.errors import SessionError
from benchnotes.session.jobs import find_job, now, open_workshop
from benchnotes.session.setting_tables import WrongValueError, tax_number, text
from benchnotes.session.settings import read_settings
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import CardField, Job, card, note

FIELDS: Final[dict[str, CardField]] = {
    "name": "owner", "street": "owner_street", "town": "owner_town", "postcode": "owner_postcode",
    "country": "owner_country", "tax_number": "owner_tax_number", "company_number": "owner_company_number",
    "phone": "owner_phone", "email": "owner_email",
}  # fmt: skip
"""Field of a party -> field of the card."""


class OwnerError(SessionError):
    """Something that cannot be noted of an owner."""


def owner_on(card_: Mapping[str, str], *, country: str) -> Party:
    """The owner as the card has it; in the workshop's own country where the card names none."""
    known = {field: card_[noted] for field, noted in FIELDS.items() if card_.get(noted)}
    return Party(**{"country": country, **known})


def note_owner(workshop: Workshop, named: str, told: Mapping[str, str]) -> tuple[Job, Party]:
    """Adds what was told to the job's card; the owner as known now. Raises NoSuchJobError, OwnerError."""
    settings = read_settings(workshop.settings)
    checked = {field: _checked(field, value) for field, value in told.items()}
    with open_workshop(workshop) as notebook:
        job = find_job(notebook, named)
        noted = card(notebook, job.number)
        for field, value in checked.items():
            if noted.get(FIELDS[field]) != value:
                note(notebook, job.number, FIELDS[field], value, at=now())
        return job, owner_on(card(notebook, job.number), country=settings.workshop.country)


def _checked(field: str, value: str) -> str:
    if field == "country":
        value = value.strip().upper()
        if value not in COUNTRIES:
            raise OwnerError(
                f'There is no country "{value}". Give its two letters (ISO 3166-1), such as GB. Nothing was noted.'
            )
        return value
    try:
        return tax_number(value) if field == "tax_number" else text(value)
    except WrongValueError as wrong:
        raise OwnerError(f'"{value}" cannot be noted: it must be {wrong}. Nothing was noted.') from wrong
