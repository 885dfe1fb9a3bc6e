"""Where the listed words stand in the talk: a spaCy component that gives `doc._.hits`.

Matching goes over plain words: lower case, punctuation left out, contractions opened ("didn't" and "didnt" are both
"did not"), so that captions and print are one; listed verbs are found in every form, listed nouns one or many.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import product

from spacy.language import Language
from spacy.matcher import Matcher, PhraseMatcher
from spacy.tokens import Doc, Token

from benchnotes.language.vocabulary import GAP, Vocabulary
from benchnotes.language.vocabulary_sheets import Phrase
from benchnotes.language.word_forms import Form, noun_forms, verb_forms

VERBS = frozenset({"work", "state", "move", "tried", "passes", "fails"})
"""Groups whose phrases begin with a verb."""
NOUNS = frozenset({"part", "set"})
BEFORE_THE_VERB = frozenset({"not", "never", "still", "barely", "hardly", "no", "new", "fresh", "be", "have"})
GAP_WORDS = 4


@dataclass(frozen=True, slots=True)
class Hit:
    """A listed phrase that was said: tokens `start` to `end` of the document, half-open."""

    phrase: Phrase
    start: int
    end: int
    form: Form | None = None
    """The form of its verb, where the phrase begins with one."""

    @property
    def length(self) -> int:
        return self.end - self.start

    def overlaps(self, other: Hit) -> bool:
        return self.start < other.end and other.start < self.end


@dataclass(frozen=True, slots=True)
class Wording:
    """One way to say a phrase: its words, and the form that its verb has in it."""

    words: tuple[str, ...]
    form: Form | None


@Language.factory("bench_hits", assigns=["doc._.hits"], default_config={})
def make_hits(nlp: Language, name: str) -> VocabularyHits:
    return VocabularyHits(nlp)


class VocabularyHits:
    """Finds listed phrases. spaCy's config carries only JSON, so it is made bare and then told the words."""

    def __init__(self, nlp: Language) -> None:
        self.nlp = nlp
        self.named: dict[str, tuple[Phrase, Form | None]] = {}
        self.whole = PhraseMatcher(nlp.vocab)
        self.gapped = Matcher(nlp.vocab)
        Doc.set_extension("hits", default=(), force=True)

    def learn(self, vocabulary: Vocabulary) -> None:
        """Take the phrases of `vocabulary`, in place of any before."""
        self.named, self.whole, self.gapped = {}, PhraseMatcher(self.nlp.vocab), Matcher(self.nlp.vocab)
        for number, phrase in enumerate(vocabulary.phrases):
            for way in _wordings(phrase, tuple(_plain_words(self.nlp.make_doc(phrase.text))), vocabulary):
                key = f"{number}:{way.form or ''}"
                self.named[key] = (phrase, way.form)
                self._add(key, way.words)

    def __call__(self, doc: Doc) -> Doc:
        kept = [token for token in doc if plain(token)]
        if kept:
            said = Doc(doc.vocab, words=[plain(token) for token in kept])
            doc._.hits = tuple(_longest(self._found(doc, said, [token.i for token in kept])))
        return doc

    def _add(self, key: str, words: tuple[str, ...]) -> None:
        if GAP not in words:
            self.whole.add(key, [Doc(self.nlp.vocab, words=list(words))])
            return
        pattern = [{"OP": f"{{0,{GAP_WORDS}}}"} if word == GAP else {"ORTH": word} for word in words]
        self.gapped.add(key, [pattern])

    def _found(self, doc: Doc, said: Doc, places: list[int]) -> Iterator[Hit]:
        shortest: dict[tuple[str, int], int] = {}
        for key, start, end in self.gapped(said):
            name = said.vocab.strings[key]
            shortest[name, start] = min(end, shortest.get((name, start), end))
        whole = ((said.vocab.strings[key], start, end) for key, start, end in self.whole(said))
        for name, start, end in (*whole, *((name, start, end) for (name, start), end in shortest.items())):
            phrase, form = self.named[name]
            hit = Hit(phrase, places[start], places[end - 1] + 1, form)
            if not _ends_a_sentence(doc, hit):
                yield hit


def plain(token: Token) -> str:
    """The word as it is matched; empty for punctuation and space."""
    if token.is_space or token.is_punct:
        return ""
    return token.norm_.lower().replace("’", "").replace("'", "")


def _plain_words(doc: Doc) -> Iterator[str]:
    for token in doc:
        word = GAP if token.text == GAP else plain(token)
        if word:
            yield word


def _ends_a_sentence(doc: Doc, hit: Hit) -> bool:
    """A phrase does not run over the end of a sentence."""
    return any(token.text in {".", "!", "?", ";"} for token in doc[hit.start : hit.end - 1])


def _wordings(phrase: Phrase, words: tuple[str, ...], vocabulary: Vocabulary) -> Iterable[Wording]:
    if not words:
        return ()
    if phrase.shape == "does" or phrase.group in VERBS:
        return _verb_wordings(words, vocabulary)
    if phrase.shape == "has" or phrase.group in NOUNS:
        return (Wording((*words[:-1], last), None) for last in noun_forms(words[-1]))
    return (Wording(words, None),)


def _verb_wordings(words: tuple[str, ...], vocabulary: Vocabulary) -> Iterator[Wording]:
    """Every form of the first word that can be a verb: after "not" and "still", and of "be" and "have" themselves."""
    at = next((place for place, word in enumerate(words) if word not in BEFORE_THE_VERB and word != GAP), 0)
    leading = [_auxiliary(word, vocabulary) for word in words[:at]]
    for form_of_verb, form in verb_forms(words[at], vocabulary.irregular).items():
        for before in product(*leading):
            yield Wording((*before, form_of_verb, *words[at + 1 :]), form)
    if words[0] == "be" and len(words) > 1:
        yield Wording(words[1:], "past")


def _auxiliary(word: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    return tuple(verb_forms(word, vocabulary.irregular)) if word in {"be", "have"} else (word,)


def _longest(hits: Iterable[Hit]) -> Iterator[Hit]:
    """Within a group, the longest of hits that overlap; the one listed first where they are equally long."""
    kept: list[Hit] = []
    for hit in sorted(dict.fromkeys(hits), key=lambda hit: (-hit.length, hit.start)):
        rivals = (other for other in kept if other.phrase.group == hit.phrase.group and other.overlaps(hit))
        if not any((other.start, other.end) != (hit.start, hit.end) for other in rivals):
            kept.append(hit)
    return iter(sorted(kept, key=lambda hit: (hit.start, hit.end)))
