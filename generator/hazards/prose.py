"""The second net: what an instruction's wording implies.

Pure: a sentence in, hazards out. It reads clause by clause. The verb of a clause says what is
done; the nouns in its reach say to what; a hazard is implied where a noun that carries it meets a
verb that brings it out, or where a phrase implies it by itself. Statements, reports and
prohibitions imply nothing; a prohibition with an exception ("do not … until …") does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from generator.hazards.clauses import Clause, Sentence, Token, sentences
from generator.hazards.lexicon import Wording, language, wordings
from generator.hazards.situation import Situation


@dataclass(frozen=True, slots=True)
class Implied:
    """One hazard that a text implies.

    Parameters
    ----------
    hazard : str
        Its name in the list of wordings.
    words : str
        The words that imply it, as written.
    start, end : int
        Where they stand in the text, in characters from 0; the end is exclusive.
    """

    hazard: str
    words: str
    start: int
    end: int


@lru_cache(maxsize=8192)
def implied(text: str) -> tuple[Implied, ...]:
    """Give the hazards that an instruction's wording implies, in the order of their words.

    Parameters
    ----------
    text : str
        One or more sentences of an instruction field.

    Returns
    -------
    tuple of Implied
        Each hazard once, at the first words that imply it.
    """
    found: dict[str, Implied] = {}
    for sentence in sentences(text):
        for hazard, wording in wordings().items():
            hit = next(filter(None, _hits(sentence, wording)), None)
            if hit and hazard not in found:
                start, end = hit[0].start, hit[-1].end
                found[hazard] = Implied(hazard, text[start:end], start, end)
    return tuple(sorted(found.values(), key=lambda one: (one.start, one.hazard)))


def declared(hazard: str, it: Situation) -> bool:
    """Say whether the facts and state of a step declare a hazard that its wording implies."""
    return any(
        (not actions or it.action in actions) and asked.matches(it)
        for actions, asked in wordings()[hazard].declared
    )


def _hits(sentence: Sentence, wording: Wording) -> Iterator[Sequence[Token]]:
    """Find the words of a sentence that imply a hazard."""
    for clause in sentence.clauses:
        if clause.instructs:
            yield from _by_act(clause, wording)
            yield from _by_noun(clause, wording)
            yield clause.match(wording.phrases)
    if sentence.whole.instructs:
        yield sentence.whole.match(wording.across)


def _by_act(clause: Clause, wording: Wording) -> Iterator[Sequence[Token]]:
    for verb in clause.verbs:
        if verb.plain in wording.acts and verb.at >= 0:
            yield [clause.tokens[verb.at]]


def _by_noun(clause: Clause, wording: Wording) -> Iterator[Sequence[Token]]:
    """Find nouns in the reach of a verb of the right kind."""
    for verb in clause.verbs:
        if verb.kinds & wording.verbs and verb.plain not in wording.but:
            reach = clause.reach(verb, at=not verb.kinds.isdisjoint(wording.at))
            for at in range(len(reach)):
                end = _noun_end(reach, at, wording)
                if end and not _harmless_head(reach, end):
                    yield reach[at:end]


def _noun_end(reach: list[Token], at: int, wording: Wording) -> int:
    """Give where a noun phrase of the hazard that begins here ends, or 0."""
    first = reach[at].word
    for start in (first, singular(first)):
        for phrase in wording.nouns.get(start, ()):
            end = at + len(phrase)
            words = [token.word for token in reach[at + 1 : end]]
            if len(words) == len(phrase) - 1 and all(
                asked in (word, singular(word))
                for asked, word in zip(phrase[1:], words, strict=True)
            ):
                return end
    return 0


def _harmless_head(reach: list[Token], end: int) -> bool:
    """Say whether the compound that goes on here ends in a head that makes it harmless."""
    words = language().words
    harmless = False
    for token in reach[end:]:
        word = singular(token.word)
        if word in words["inert_heads"]:
            harmless = True
        elif word in words["carriers"]:
            harmless = False
        else:
            break
    return harmless


def singular(word: str) -> str:
    """Give a noun without its plural or possessive "s"."""
    if word.endswith("'s"):
        return word[:-2]
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


