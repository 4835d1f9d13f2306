"""What the margin of an elevation says: facts, findings, key table, in blocks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from elevation.findings.model import Finding, Weight
from elevation.findings.unknowns import unknowns
from elevation.room.model import Ref, Treatment
from elevation.setting_out.model import SetOut
from elevation.sheet.annotation import Annotation
from elevation.sheet.blocks import BODY, Block, Run, fact, finding_block, heading, key_rows, paragraph
from elevation.sheet.facts import digest_of, facts_of, title_of
from elevation.sheet.records import Ink
from elevation.trade.model import Trade
from elevation.words import Message, Style, msg, msg_plural, say

MOST_IN_FULL = 2
"""Treatments whose facts are given in full; more of them share the margin in one paragraph each."""

_WORDS: dict[Weight, Message] = {
    Weight.STOP: msg("Stop"),
    Weight.BROKEN: msg("Broken"),
    Weight.CONSIDER: msg("Consider"),
}


def margins(
    set_out: SetOut,
    findings: Sequence[Finding],
    treatments: Mapping[Ref, Treatment],
    trade: Trade,
    style: Style,
    annotation: Annotation,
    width: float,
) -> Iterator[Sequence[Block]]:
    """The margin's blocks, the fullest first; then with fewer facts, what is not known only counted, fewer findings.

    Keys are always there.
    """
    keys = _keys(annotation, style, width)
    told = _told(findings, style, width)
    unknown = _unknown(set_out, style, width)
    facts = _facts(set_out, treatments, trade, style, width)
    brief = _digests(set_out, style, width)
    yield [*facts, *told, *unknown, *keys]
    yield [*brief, *told, *unknown, *keys]
    for kept in range(len(brief) - 1, 0, -1):
        yield [*brief[:kept], *_more(len(brief) - kept, style, width), *told, *unknown, *keys]
    yield [*told, *unknown, *keys]
    counted = _counted(set_out, style, width)
    yield [*told, *counted, *keys]
    for kept in range(len(findings) - 1, -1, -1):
        yield [*told[: kept + 1], *_more(len(findings) - kept, style, width), *counted, *keys]
    yield keys


def _more(count: int, style: Style, width: float) -> list[Block]:
    return [paragraph(say(msg("… and {count} more", count=count), style), width, ink=Ink.QUIET)]


def _facts(set_out: SetOut, treatments: Mapping[Ref, Treatment], trade: Trade, style: Style, width: float) -> list[Block]:
    if len(set_out.treatments) > MOST_IN_FULL:
        return _digests(set_out, style, width)
    blocks: list[Block] = []
    for laid in set_out.treatments:
        blocks.append(heading(title_of(laid, style), width))
        facts = facts_of(laid, treatments.get(laid.ref), trade, style)
        blocks.extend(fact(label, value, width) for label, value in facts)
    return blocks


def _digests(set_out: SetOut, style: Style, width: float) -> list[Block]:
    """One paragraph a treatment; treatments that are dressed the same share one."""
    shared: dict[str, list[str]] = {}
    for laid in set_out.treatments:
        shared.setdefault(digest_of(laid, style), []).append(title_of(laid, style))
    blocks: list[Block] = []
    for text, names in shared.items():
        title = paragraph(", ".join(names), width, 3.0)
        body = paragraph(text, width, 2.8, Ink.QUIET)
        runs = (*title.runs, *(_lowered(run, title.height - 1.2) for run in body.runs))
        blocks.append(Block(title.height - 1.2 + body.height + 0.4, runs))
    return blocks


def _lowered(run: Run, by: float) -> Run:
    return Run(run.right, run.down + by, run.text, run.size, run.ink, run.weight)


def _told(findings: Sequence[Finding], style: Style, width: float) -> list[Block]:
    if not findings:
        return []
    blocks = [heading(say(msg("Findings"), style), width)]
    warned = {""}
    before: tuple[str, str] | None = None
    for number, finding in enumerate(findings, 1):
        word = say(_WORDS[finding.weight], style)
        text = say(finding.text, style)
        authority = say(finding.authority, style)
        # Who says so stands with the first of a row of alike findings, a caution with the first that it belongs to.
        said_already = (finding.rule, authority) == before
        before = (finding.rule, authority)
        caution = "" if finding.caution is None else say(finding.caution, style)
        blocks.append(
            finding_block(
                finding.weight,
                number,
                word,
                text,
                "" if said_already else authority,
                width,
                "" if caution in warned else caution,
            )
        )
        warned.add(caution)
    return blocks


def _unknown(set_out: SetOut, style: Style, width: float) -> list[Block]:
    found = unknowns(set_out)
    if not found:
        return []
    texts = (paragraph(say(unknown.text, style), width, BODY) for unknown in found)
    return [heading(say(msg("Not known yet"), style), width), *texts]


def _counted(set_out: SetOut, style: Style, width: float) -> list[Block]:
    count = len(unknowns(set_out))
    return [paragraph(say(msg_plural("{count} not known yet", "{count} not known yet", count=count), style), width)] * bool(
        count
    )


def _keys(annotation: Annotation, style: Style, width: float) -> list[Block]:
    if not annotation.keys and not annotation.unshown:
        return []
    blocks = [heading(say(msg("Key"), style), width)]
    blocks.extend(key_rows([(key.letter, key.figure) for key in annotation.keys], width))
    blocks.extend(paragraph(text, width) for _, text in annotation.unshown)
    return blocks
