"""The same facts for machines: plain dictionaries, ready for JSON."""

import math
from typing import Any

from chartgen.limits.cut import Cut, FeedLimit
from chartgen.limits.window import Windows
from chartgen.model.shop import Shop
from chartgen.wording.explanation import Explanation
from chartgen.wording.printed import PrintedChart
from chartgen.wording.steps.dig_in import sudden_bite

_PLACES = 6


def cut_answer(shop: Shop, cut: Cut, windows: Windows, advice: str) -> dict[str, Any]:
    """Return one cut as a dictionary; a limit that does not apply is None."""
    index = (0, shop.blades.index(cut.blade), 0)
    force = cut.force
    return {
        "material": cut.material.key,
        "tool": cut.blade.name,
        "diameter_mm": _number(cut.diameter),
        "bore_mm": _number(cut.bore),
        "spindle_speed_rpm": _number(cut.spindle_speed),
        "drive_position": cut.position.name,
        "cutting_speed_m_min": _number(cut.cutting_speed),
        "feed_mm_rev": _number(cut.feed),
        "feed_rate_mm_min": _number(cut.feed_rate),
        "handle_seconds_per_turn": _number(cut.seconds_per_turn),
        "time_min": _number(cut.time),
        "force_n": {
            "low": _number(force.low),
            "nominal": _number(force.nominal),
            "high": _number(force.high),
        }
        if force
        else None,
        "force_models_n": {
            "power_law_sharp": _number(force.sharp),
            "unit_energy_sharp": _number(force.by_unit_energy),
        }
        if force
        else None,
        "power_w": {
            "needed_high": _number(cut.power_needed) if force else None,
            "continuous": _number(cut.power_continuous),
            "one_cut": _number(cut.power_one_cut),
        },
        "torque_nm": {
            "needed_high": _number(cut.torque_needed) if force else None,
            "available": _number(cut.torque_available),
            "stall": _number(cut.torque_stall),
        },
        "floor": _limit(cut.floor),
        "ceiling": _limit(cut.ceiling),
        "limits": {
            "floors": [_limit(limit) for limit in cut.floors],
            "ceilings": [_limit(limit) for limit in cut.ceilings],
            "speeds": [
                {"spindle_speed_rpm": _number(s.speed), "reason": s.reason.legend}
                for s in cut.speed_limits
            ],
        },
        "soft_floor_m_min": _number(cut.soft_floor_speed) or None,
        "margin": _number(cut.ceiling.feed / cut.feed),
        "verdict": cut.side.value,
        "tight": bool(windows.is_tight[index]),
        "slow": bool(windows.is_slow[index]),
        "dig_in": _dig_in(cut),
        "advice": advice,
    }


def explanation_answer(explanation: Explanation) -> dict[str, Any]:
    """Return the steps of an explanation as a dictionary."""
    return {
        "heading": explanation.heading,
        "outcome": explanation.outcome,
        "steps": [
            {
                "title": step.title,
                "formula": step.formula,
                "values": step.values,
                "result": step.result,
                "source": step.source,
            }
            for step in explanation.steps
        ],
        "ways_out": list(explanation.ways),
        "sensitivity": list(explanation.sensitivity),
        "allowances": list(explanation.allowances),
    }


def chart_answer(chart: PrintedChart) -> dict[str, Any]:
    """Return a printed chart as a dictionary; the strings are those of the card."""
    return {
        "title": chart.title,
        "units": {
            "diameter": chart.corner,
            "speed": chart.speed_heading,
            "feed": chart.feed_heading,
            "pace": chart.pace_heading,
        },
        "columns": [{"letter": c.letter, "name": c.name} for c in chart.columns],
        "rows": [
            {
                "diameter": stub,
                "cells": [
                    {
                        "speed": cell.speed,
                        "position": cell.position,
                        "feed": cell.feed,
                        "pace": cell.pace,
                        "sign": cell.sign,
                        "verdict": cell.verdict,
                        "way_out": cell.way_out,
                        "floor": {"feed": cell.floor, "reason": cell.floor_reason},
                        "ceiling": {"feed": cell.ceiling, "reason": cell.ceiling_reason},
                    }
                    for cell in cells
                ],
            }
            for stub, cells in zip(chart.stub, chart.rows, strict=True)
        ],
        "legend": {entry.sign: entry.sentence for entry in chart.legend},
    }


def _dig_in(cut: Cut) -> dict[str, Any] | None:
    found = sudden_bite(cut)
    if found is None:
        return None
    return {
        "slack_mm": _number(found.slack),
        "gives": found.gives.name.lower(),
        "carried_turns": _number(found.carried_turns),
    }


def _limit(limit: FeedLimit) -> dict[str, Any]:
    return {"feed_mm_rev": _number(limit.feed), "reason": limit.reason.legend}


def _number(value: float | None) -> float | None:
    """Return a number JSON can hold: no infinity, no digits beyond what is known."""
    if value is None or not math.isfinite(value):
        return None
    return round(float(value), _PLACES)
