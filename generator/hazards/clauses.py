"""Sentences cut into clauses: which verb governs each, and whether it instructs at all."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from generator.hazards.lexicon import Language, Words, language

_WORD = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9\u00ad]|['’](?=[A-Za-z]))*|[,;:.!?()—–\n]")
_STOPS = frozenset(".!?\n")
_BREAKS = frozenset(",;:—–")
_JOINS = frozenset(
    ("and", "then", "or", "but", "while", "until", "unless", "before", "after", "whether", "that",
     "how", "why", "what", "because", "so", "without", "once", "as", "if", "when", "where", "which")
)  # fmt: skip
_REPORTS = frozenset(("whether", "that", "how", "why", "what", "because", "where", "which"))
_MEANWHILE = frozenset(("while", "with", "as", "after", "when", "once"))
_PLUGS = frozenset(("unplug", "unclip", "disconnect", "unhook"))
_BRING = ("fit", "probe", "charge", "clean", "heat", "check", "act")
MASKED = "·"
"""Stands for the words of a harmless whole."""


@dataclass(frozen=True, slots=True)
class Token:
    """One word: as compared, and where it stands."""

    word: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Verb:
    """A verb that governs a clause.

    `at` is its place in the clause, -1 where it is taken over from the clause before; `whole` is
    true where the nouns before it are in its reach too ("with the pipe removed").
    """

    plain: str
    kinds: frozenset[str]
    at: int
    whole: bool = False


@dataclass(frozen=True)
class Clause:
    """A stretch of a sentence, with the verbs that govern it."""

    tokens: tuple[Token, ...]
    verbs: tuple[Verb, ...]
    instructs: bool

    @cached_property
    def spelled(self) -> tuple[str, tuple[int, ...]]:
        """The clause as one text, and where each word begins in it."""
        starts, text = [], ""
        for token in self.tokens:
            starts.append(len(text))
            text += token.word + " "
        return text, tuple(starts)

    def match(self, pattern: re.Pattern[str] | None) -> tuple[Token, ...]:
        """Give the words that a pattern matches, or none."""
        text, starts = self.spelled
        found = pattern.search(text) if pattern else None
        if found is None:
            return ()
        return tuple(
            token
            for token, start in zip(self.tokens, starts, strict=True)
            if found.start() <= start < found.end()
        )

    def reach(self, verb: Verb, *, at: bool) -> list[Token]:
        """Give the words that a verb acts on: what follows, up to a word that only says where.

        With `at`, what the verb is done at or on counts too, unless it parts a plug.
        """
        lang = language()
        tokens = list(self.tokens)[0 if verb.whole else verb.at + 1 :]
        brings = (at and verb.plain not in _PLUGS) or not verb.kinds.isdisjoint(_BRING)
        for end, token in enumerate(tokens):
            stops = token.word in lang.words["places"] or (
                token.word in lang.words["brings"] and not brings
            )
            if stops and not verb.whole:
                return tokens[:end]
        return tokens


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence: all its words as one clause, and its clauses."""

    whole: Clause
    clauses: tuple[Clause, ...]


def sentences(text: str) -> Iterator[Sentence]:
    """Cut a text into sentences, and each into clauses."""
    for tokens in _split_text(text):
        if tokens:
            yield _sentence(_masked(tokens, language()))


def _split_text(text: str) -> Iterator[list[Token]]:
    same = language().same
    tokens: list[Token] = []
    for match in _WORD.finditer(text):
        word = match.group().replace("\u00ad", "").replace("’", "'").casefold()
        decimal = word == "." and text[match.end() : match.end() + 1].isdigit()
        if word in _STOPS and not decimal:
            yield tokens
            tokens = []
        elif word not in ("(", ")", "."):
            tokens.append(Token(same.get(word, word), match.start(), match.end()))
    yield tokens


def _masked(tokens: list[Token], lang: Language) -> list[Token]:
    """Put a blank in the place of each harmless whole."""
    words = [token.word for token in tokens]
    out = list(tokens)
    for at, word in enumerate(words):
        for mask in lang.masks.get(word, ()):
            if _same(words[at : at + len(mask)], mask):
                for i in range(at, at + len(mask)):
                    out[i] = Token(MASKED, tokens[i].start, tokens[i].end)
    return out


def _same(words: list[str], mask: Words) -> bool:
    last = words[-1]
    return tuple(words) == mask or (*words[:-1], last.removesuffix("s")) == mask


def _sentence(tokens: list[Token]) -> Sentence:
    lang = language()
    tokens, forbidden = _steered(tokens, lang)
    words = {token.word for token in tokens}
    excepted = not lang.words["unless"].isdisjoint(words)
    parts = list(_parts(tokens))
    own = [
        _verbs(part, lang, after=bool(intro))
        if not at or len(part) > 1 or part[0].word not in lang.plain
        else ()
        for at, (intro, part) in enumerate(parts)
    ]
    finite = [_finite(part, lang) for _intro, part in parts]
    instructs = any(own)
    clauses: list[Clause] = []
    governing: tuple[Verb, ...] = ()
    denied = forbidden
    lone: tuple[Verb, ...] = ()
    for (intro, part), verbs, is_finite in zip(parts, own, finite, strict=True):
        if verbs or intro in _MEANWHILE:
            denied = forbidden or _denies(part, verbs, lang)
        taken_over = tuple(Verb(v.plain, v.kinds, -1) for v in (governing if not verbs else lone))
        checked = intro == "that" and any("check" in v.kinds for v in governing)
        helped = not lang.words["helpers"].isdisjoint(token.word for token in part)
        stated = not verbs and not helped and (is_finite or (not instructs and any(finite)))
        stated = stated and not checked and (intro not in _MEANWHILE or _is_report(part))
        every = (*verbs, *taken_over)
        tells = bool(every) and all(v.kinds == frozenset({"tell"}) for v in every)
        if tells and intro in _MEANWHILE and every[0].at >= 0:
            tells = part[every[0].at].word == every[0].plain
        reports = intro in _REPORTS and not checked
        silent = stated or tells or reports or intro == "without"
        clauses.append(
            Clause(tuple(part), every, not silent and (not denied or excepted))
        )  # fmt: skip
        lone = verbs if verbs and len(part) == verbs[0].at + 1 else ()
        governing = verbs or governing
    unbroken = tuple(token for token in tokens if token.word not in _BREAKS)
    return Sentence(Clause(unbroken, (), any(c.instructs for c in clauses)), tuple(clauses))


def _steered(tokens: list[Token], lang: Language) -> tuple[list[Token], bool]:
    """Take a phrase like "be sure to" or "there is no need to" off the front."""
    words = tuple(token.word for token in tokens)
    for phrase in lang.positive:
        if words[: len(phrase)] == phrase:
            return tokens[len(phrase) :], False
    for phrase in lang.negative:
        if words[: len(phrase)] == phrase:
            return tokens[len(phrase) :], True
    return tokens, False


def _parts(tokens: list[Token]) -> Iterator[tuple[str, list[Token]]]:
    """Cut at commas and joining words; give each part with the word that introduces it."""
    intro, part = "", list[Token]()
    for token in tokens:
        if token.word in _BREAKS or token.word in _JOINS:
            if part:
                yield intro, part
                intro, part = "", []
            if token.word in _JOINS:
                intro = token.word
        elif not part and token.word in _MEANWHILE:
            intro = token.word
        else:
            part.append(token)
    if part:
        yield intro, part


def _verbs(part: list[Token], lang: Language, *, after: bool) -> tuple[Verb, ...]:
    """Find the verbs of a clause: at its head, after "to" or a helper, or as a participle.

    Where a time or place comes first ("after ten minutes remove the …"), the verb is the first
    word that can be one and has its object behind it.
    """
    words = [token.word for token in part]
    at = 0
    while at < len(words) and (words[at] in lang.words["adverbs"] or _negates(words, at, lang)):
        at += 1
    found: list[Verb] = []
    if at < len(words) and words[at] in lang.plain:
        follows = words[at + 1] if at + 1 < len(words) else ""
        if follows not in lang.words["finite"]:
            found.append(Verb(words[at], lang.plain[words[at]], at))
    elif at < len(words) and _unknown_verb(words, at, lang):
        found.append(Verb(words[at], frozenset(EVERY_KIND), at))
    delegated = bool(found) and found[0].plain in lang.words["delegates"]
    for i in range(at + 1 if found else at, len(words)):
        word, before = words[i], words[i - 1] if i else ""
        if word in lang.plain and (before == "to" or (delegated and before not in _ARTICLES)):
            found.append(Verb(word, lang.plain[word], i))
        elif after and not found and word in lang.plain and words[i + 1 : i + 2] != []:
            if words[i + 1] in _ARTICLES and before not in _ARTICLES:
                found.append(Verb(word, lang.plain[word], i))
        elif word in lang.participles and not found and before not in _NO_VERB_AFTER:
            plain = lang.participles[word]
            found.append(Verb(plain, lang.plain[plain], i, whole=not word.endswith("ing")))
    return tuple(found)


_ARTICLES = frozenset(("a", "an", "the", "this", "that", "its", "your", "each", "one"))

EVERY_KIND = ("open", "fit", "clean", "lift")
"""What a verb that the list does not know is taken to do."""
_PARTICLES = frozenset(("up", "out", "off", "down", "away", "apart", "loose", "back"))


def _unknown_verb(words: list[str], at: int, lang: Language) -> bool:
    """Say whether a word that no list knows stands where a verb does: before "the" or "your"."""
    word, rest = words[at], words[at + 1 : at + 3]
    if rest and rest[0] in _PARTICLES:
        rest = rest[1:]
    known = word in lang.participles or any(word in of for of in lang.words.values())
    return bool(rest) and rest[0] in _ARTICLES and not known and word.isalpha()


_NO_VERB_AFTER = _ARTICLES | {"is", "are", "was", "were", "been"}
"""After these a participle describes: "the cranking speed", "it is fitted"."""


def _negates(words: list[str], at: int, lang: Language) -> bool:
    word = words[at]
    after = words[at + 1] if at + 1 < len(words) else ""
    return word in lang.words["never"] or (word in ("do", "must", "should") and after == "not")


def _denies(part: list[Token], verbs: tuple[Verb, ...], lang: Language) -> bool:
    """Say whether a clause forbids: a negation before its verb, or "keep away from"."""
    words = [token.word for token in part]
    head = words[: verbs[0].at] if verbs else words[:4]
    if not lang.words["never"].isdisjoint(head):
        return True
    keeps = bool(verbs) and verbs[0].plain in ("keep", "stay", "stand")
    return keeps and not lang.words["away"].isdisjoint(words)


def _finite(part: list[Token], lang: Language) -> bool:
    return any(token.word in lang.words["finite"] for token in part)


def _is_report(part: list[Token]) -> bool:
    """Say whether a clause of time tells what was: "when the lamp came up", "while it was"."""
    return any(token.word in ("was", "were", "had", "came") for token in part)
