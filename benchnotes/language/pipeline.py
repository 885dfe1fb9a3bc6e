"""Our spaCy components in order, each saying what it needs and what it gives."""

from __future__ import annotations

from typing import cast

from spacy.language import Language

from benchnotes.language.amount_hits import Amounts
from benchnotes.language.clauses import Clauses
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.language.vocabulary_hits import VocabularyHits

COMPONENTS: dict[str, type] = {"bench_amounts": Amounts, "bench_hits": VocabularyHits, "bench_clauses": Clauses}
"""In order; each runs on a document that was made by hand too, where that has what it needs."""


def build(nlp: Language, vocabulary: Vocabulary) -> Language:
    """`nlp` with our components at its end, told the words of `vocabulary`; those of an earlier build are replaced.

    A parsed document then carries `doc._.amounts`, `doc._.hits` and `doc._.clauses`.
    """
    for name in COMPONENTS:
        if name in nlp.pipe_names:
            nlp.remove_pipe(name)
        nlp.add_pipe(name)
    cast(Amounts, nlp.get_pipe("bench_amounts")).learn(vocabulary.units)
    cast(VocabularyHits, nlp.get_pipe("bench_hits")).learn(vocabulary)
    return nlp
