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
ACTS = frozenset({"work", "state", "move"})
"""Groups whose phrases are only meant where their verb is one: "the drill" is no drilling."""
NOUNS = frozenset({"part", "set", "not_part"})
OPENERS = frozenset({"not", "never", "still", "barely", "hardly", "just", "only", "be", "have"})
"""Words that may stand before the verb of a listed phrase."""
NO_VERBS = frozenset({
    "new", "fresh", "no", "on", "off", "out", "in", "back", "up", "by", "a", "an", "the", "one", "two", "first",
    "second", "nothing", "lid", "cover", "wrong", "dead", "bone", "way", "like", "with", "within", "both", "every",
    "each", "all",
})  # fmt: skip
"""Words that never are the verb of a phrase: a phrase that opens with one is matched as it is written."""
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
        said_so = (hit for hit in self.anywhere(doc) if not _ends_a_sentence(doc, hit) and _is_said_so(doc, hit))
        doc._.hits = tuple(_meant(_longest(said_so)))
        return doc

    def _add(self, key: str, words: tuple[str, ...]) -> None:
        if GAP not in words:
            self.whole.add(key, [Doc(self.nlp.vocab, words=list(words))])
            return
        pattern = [{"OP": f"{{0,{GAP_WORDS}}}"} if word == GAP else {"ORTH": word} for word in words]
        self.gapped.add(key, [pattern])

    def anywhere(self, doc: Doc) -> Iterator[Hit]:
        """Every listed phrase that stands in `doc`, overlapping ones too, whether it is meant there or not."""
        kept = [token for token in doc if plain(token)]
        if not kept:
            return
        said = Doc(doc.vocab, words=[plain(token) for token in kept])
        for key, start, end in self._matches(said):
            phrase, form = self.named[said.vocab.strings[key]]
            yield Hit(phrase, kept[start].i, kept[end - 1].i + 1, form)

    def _matches(self, said: Doc) -> Iterator[tuple[int, int, int]]:
        """Matches in the plain words; of those with a gap, the shortest from each place."""
        shortest: dict[tuple[int, int], int] = {}
        for key, start, end in self.gapped(said) if len(self.gapped) else ():
            shortest[key, start] = min(end, shortest.get((key, start), end))
        if len(self.whole):
            yield from self.whole(said)
        yield from ((key, start, end) for (key, start), end in shortest.items())


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


def _is_said_so(doc: Doc, hit: Hit) -> bool:
    """A listed verb is a verb here, a listed condition noun a noun; a gap holds neither a comma nor a verb."""
    tags = [token.tag_ for token in doc[hit.start : hit.end]]
    phrase = hit.phrase
    if GAP in phrase.text:
        inner = doc[hit.start + 1 : hit.end - 1]
        if any(token.is_punct or token.tag_ in {"VBD", "VBZ", "VBP", "VB", "MD"} for token in inner):
            return False
    if hit.form in {"base", "s"} and (phrase.shape == "does" or phrase.group in ACTS or hit.length == 1):
        return any(tag.startswith(("VB", "MD")) for tag in tags)
    if phrase.shape == "has":
        return any(tag.startswith(("NN", "VBG")) for tag in tags)
    return True


def _meant(hits: Iterable[Hit]) -> Iterator[Hit]:
    """Hits without those that stand inside a longer idiom."""
    every = list(hits)
    idioms = [hit for hit in every if hit.phrase.group == "idiom"]
    for hit in (hit for hit in every if hit not in idioms):
        held = (idiom for idiom in idioms if idiom.start <= hit.start and hit.end <= idiom.end)
        if not any(idiom.length > hit.length for idiom in held):
            yield hit


def _wordings(phrase: Phrase, words: tuple[str, ...], vocabulary: Vocabulary) -> Iterable[Wording]:
    if not words:
        return ()
    if phrase.shape == "does" or phrase.group in VERBS:
        return _verb_wordings(words, vocabulary)
    if phrase.shape == "has" or phrase.group in NOUNS:
        return (Wording((*words[:-1], last), None) for last in noun_forms(words[-1]))
    return (Wording(words, None),)


def _verb_wordings(words: tuple[str, ...], vocabulary: Vocabulary) -> Iterator[Wording]:
    """Every form of its verb: the first word after "not", "still", "be" and "have", where that can be a verb."""
    at = next((place for place, word in enumerate(words) if word not in OPENERS), len(words) - 1)
    leading = [_auxiliary(word, vocabulary) for word in words[:at]]
    inflects = words[at] not in NO_VERBS and words[at] != GAP
    forms: dict[str, Form] = verb_forms(words[at], vocabulary.irregular) if inflects else {}
    for before in product(*leading):
        if not inflects:
            yield Wording((*before, *words[at:]), None)
        for form_of_verb, form in forms.items():
            yield Wording((*before, form_of_verb, *words[at + 1 :]), form)
    if words[0] == "be" and len(words) > 1:
        yield Wording(words[1:], None)


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
