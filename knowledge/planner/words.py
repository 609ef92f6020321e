"""How amounts, sizes, temperatures and times are said to a cook, in the cook's own units."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from knowledge.planner.dinner import Dish


def minutes(seconds: float) -> int:
    """Whole minutes; to the nearest five beyond thirty."""
    exact = seconds / 60.0
    return int(round(exact / 5.0) * 5) if exact > 32 else max(1, round(exact))


def duration(seconds: float) -> str:
    """A length of time: "12 min", "1 h 30"."""
    whole = minutes(seconds)
    if whole < 90:
        return f"{whole} min"
    hours, rest = divmod(whole, 60)
    return f"{hours} h {rest:02d}" if rest else f"{hours} h"


def temperature(degC: float, units: str) -> str:
    """A temperature, rounded to what a thermometer can show."""
    if units == "us":
        return f"{round(degC * 9 / 5 + 32):.0f} °F"
    return f"{degC:.0f} °C"


def oven(degC: float, units: str) -> str:
    """An oven setting: steps of 10 °C or 25 °F."""
    if units == "us":
        return f"{round((degC * 9 / 5 + 32) / 25) * 25:.0f} °F"
    return f"{round(degC / 10) * 10:.0f} °C" if degC != 175 else "175 °C"


def volume(ml: float, units: str) -> str:
    """A volume: 50 ml steps, or quarter cups."""
    if units == "us":
        quarters = max(1, round(ml / 60.0))
        whole, rest = divmod(quarters, 4)
        part = ("", "1/4", "1/2", "3/4")[rest]
        said = " ".join(p for p in (str(whole) if whole else "", part) if p)
        return f"{said} cup{'s' if quarters > 4 else ''}"
    if ml >= 1000:
        return f"{ml / 1000:.1f} l".replace(".0 l", " l")
    return f"{max(50, round(ml / 50) * 50):.0f} ml"


def weight(grams: float, units: str) -> str:
    """A weight of food."""
    if units == "us":
        ounces = grams / 28.349523
        if ounces < 15.5:
            return f"{max(1, round(ounces))} oz"
        pounds, quarters = divmod(round(ounces / 4), 4)
        return " ".join(p for p in (str(pounds), ("", "1/4", "1/2", "3/4")[quarters]) if p) + " lb"
    if grams < 50:
        return f"{max(1, round(grams))} g"
    if grams < 1000:
        return f"{5 * round(grams / 5)} g"
    return f"{grams / 1000:.1f} kg".replace(".0 kg", " kg")


def handy(grams: float) -> float:
    """A guessed weight, to what a kitchen scale is read to: 5 g, 10 g, from 400 g 50 g."""
    step = 5 if grams < 100 else 10 if grams < 400 else 50
    return float(max(step, round(grams / step) * step))


def size(mm: float, units: str) -> str:
    """The size of a cut."""
    if units != "us":
        return f"{mm:.0f} mm"
    step = 1 if mm < 12 else 2 if mm < 24 else 4  # nobody measures an eighth on a large piece
    eighths = max(1, round(mm / 25.4 * 8 / step) * step)
    whole, rest = divmod(eighths, 8)
    part = ("", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")[rest]
    return f"{' '.join(p for p in (str(whole) if whole else '', part) if p)} inch"


def amount(dish: Dish, units: str) -> str:
    """How much of a dish: the weight that was said, or whole pieces where it comes in pieces."""
    if dish.weighed or dish.cut_said in ("ground", "diced", "strips", "chopped", "sliced"):
        return f"{weight(dish.grams, units)} {_mass(dish)}"
    if dish.piece_g and (dish.piece_g > 40 or dish.unit or dish.part == "aromatic"):
        count = dish.grams / dish.piece_g
        nameless = dish.food.animal not in ("", "fish") and plural(dish.name) == dish.name and not dish.unit
        if nameless and count > 1.2:
            return f"{weight(dish.grams, units)} {_mass(dish)}"  # nobody counts "6 stew beef"
        halves = dish.part != "protein" and not dish.unit  # nobody halves a fillet or an egg
        if halves and (abs(count - 0.25) < 0.06 or abs(count - 0.75) < 0.06):
            return f"{'a quarter' if count < 0.5 else 'three quarters'} of {_a(dish.name)}"
        for whole in (round(count), round(count * 2) / 2):
            if whole >= 0.5 and abs(count - whole) < 0.12 and (halves or whole == int(whole)):
                return pieces(whole, dish)
    return f"{weight(dish.grams, units)} {_mass(dish)}"


def pieces(number: float, dish: Dish) -> str:
    """So many of it: "2 carrots", "half a cauliflower", "2 cod fillets", "3 ears of corn"."""
    if dish.unit:
        one = number <= 1
        if dish.unit in AFTER_NAME:
            return f"{counted(number)} {dish.name} {dish.unit}{'' if one else 's'}"
        return f"{counted(number)} {dish.unit}{'' if one else 's'} of {dish.name}"
    if number == 0.5:
        return f"half {_a(dish.name)}"
    return f"{counted(number)} {dish.name if number <= 1 else plural(dish.name)}"


AFTER_NAME = frozenset({"fillet", "steak"})


def _a(name: str) -> str:
    return f"{'an' if name[:1] in 'aeiou' else 'a'} {name}"


def _mass(dish: Dish) -> str:
    if dish.comes_in_pieces:
        return f"{dish.name} in pieces"
    return _plain_mass(dish)


def _plain_mass(dish: Dish) -> str:
    """Its name after a weight: "600 g potatoes", "700 g beef chuck" (one joint, or part of it)."""
    joint = dish.piece_g is not None and dish.piece_g > 450 and dish.grams < 1.5 * dish.piece_g
    return dish.name if joint else plural(dish.name)


def counted(number: float) -> str:
    """A number of pieces: "2", "half", "1 and a half"."""
    whole, half = int(number), number % 1 > 0.25
    if not half:
        return str(whole)
    return f"{whole} and a half" if whole else "half"


def label(dish: Dish) -> str:
    """A dish as it is called in a step: "carrots", "chicken thigh" when there is one, "rice"."""
    if dish.piece_g and dish.piece_g > 40 and dish.grams < 1.3 * dish.piece_g:
        return dish.name
    return plural(dish.name)


MASS = frozenset(  # names that have no plural in a kitchen
    """rice pasta barley spinach kale beef pork lamb couscous quinoa okra broccoli fish salmon cod cabbage
    garlic celery corn tofu fennel asparagus shrimp squid trout tuna veal bacon chicken turkey
    cauliflower lettuce chard arugula watercress farro bulgur millet polenta orzo spaghetti linguine
    macaroni penne ginger goat mutton venison duck ham paneer halloumi tempeh seitan cheese haddock
    hake pollock catfish mackerel halibut tilapia snapper bass liver brisket shoulder belly loin
    tenderloin chorizo kielbasa andouille sauerkraut rabe broccolini choy freekeh hominy buckwheat
    amaranth teff fonio rhubarb pumpkin squash silverbeet cress sorrel fern gnocchi crab lobster
    meat mince seaweed nori lasagna stuffing surimi sweetcorn passata beetroot tripe kimchi
    edamame choi veg rocket shin chuck neck gammon topside silverside knuckle
    rind mash coley pollack bream ling turbot sole skate eel octopus calamari tagliatelle fusilli penne
    ditalini arborio basmati jasmine haloumi rajma dal daal dhal urad moong masoor egusi gari fufu""".split()  # noqa: SIM905
)


def plural(name: str) -> str:
    """The plural of a food's name, for a count of pieces: "carrots", "legs of lamb", "corn on the cob"."""
    for link in (" of ", " on "):
        if link in name:
            head, tail = name.split(link, 1)
            return f"{plural(head)}{link}{tail}"
    last = name.rsplit(" ", 1)[-1]
    if last in MASS or last.endswith(("s", "fish")) or name.startswith("ground "):
        return name
    if last.endswith(("ch", "sh", "x")) or last in ("potato", "tomato", "mango"):
        return f"{name}es"
    if last.endswith("y") and last[-2:-1] not in "aeiou":
        return f"{name[:-1]}ies"
    if last == "leaf":
        return f"{name[:-1]}ves"
    return f"{name}s"


def listed(names: Sequence[str]) -> str:
    """ "a", "a and b", "a, b and c"."""
    unique = list(dict.fromkeys(names))
    if len(unique) < 2:
        return "".join(unique)
    return f"{', '.join(unique[:-1])} and {unique[-1]}"
