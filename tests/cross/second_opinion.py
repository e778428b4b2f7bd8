"""predict and design reckoned a second time, straight from the JSON files and with nothing of the program.

The formulas are written down again from their published sources; ratings are found by trying shifts one by one.
"""

import glob
import json
import math
import os
import subprocess

import numpy as np

TOP = os.environ.get("USC_TOP") or os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get("UNDERSCREED") or os.path.join(TOP, "build", "underscreed")
TOLERANCE = 1e-6
results = []


def report(title, complaints):
    results.append(title)
    print(f"{'not ok' if complaints else 'ok'} {len(results)} - {title}")
    for complaint in complaints[:20]:
        print(f"# {complaint}")


def read(*path):
    with open(os.path.join(TOP, "data", *path), encoding="utf-8") as file:
        return json.load(file)


def rows(folder, key):
    found = []
    for path in sorted(glob.glob(os.path.join(TOP, "data", folder, "*.json"))):
        found += read(folder, os.path.basename(path)).get(key, [])
    return found


UNDERLAYS = rows("catalogue", "underlays")
SCREEDS = rows("catalogue", "screeds")
FLOORINGS = rows("catalogue", "floorings")
LIMITS = {row["id"]: row for row in rows("limits", "limits")}
RULES = {row["id"]: row for row in rows("practice", "thickness")}
[REPORT_PERCENT] = [row["value"] for row in rows("practice", "rules") if row["id"] == "test_report_mass_percent"]


def by_id(table, name):
    [row] = [row for row in table if row["id"] == name]
    return row


# Third octaves 50..5000 Hz, nominal.
FREQUENCY = np.array([50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000.0])
RATED = slice(3, 19)
# ISO 717-2: reference curve for impact sound 100..3150 Hz, and the levels of the heavy reference floor (78 dB).
CURVE = np.array([62, 62, 62, 62, 62, 62, 61, 60, 59, 58, 57, 54, 51, 48, 45, 42])
REFERENCE_FLOOR = np.array([67, 67.5, 68, 68.5, 69, 69.5, 70, 70.5, 71, 71.5, 72, 72, 72, 72, 72, 72])


def tenths(value):
    """Halves up, in whole tenths; the addend makes what is a half on paper one."""
    return np.floor(np.asarray(value) * 10 + 0.5 + 1e-7).astype(int)


def rated(level_tenths, step):
    """ISO 717-2, 4.3.1: the lowest shift, in steps, at which the levels exceed the curve by 32.0 dB at most. Every
    shift is tried, from far below."""
    for shift in range(-2000, 2000, step):
        if np.maximum(0, level_tenths - (CURVE * 10 + shift)).sum() <= 320:
            return (600 + shift) / 10
    raise ValueError("no shift serves")


def rated_improvement(delta_L, step):
    """ISO 717-2, clause 5: 78 dB less the rating of the reference floor with the covering on it."""
    floor = REFERENCE_FLOOR * 10
    return 78 - rated((floor - tenths(delta_L[RATED] if len(delta_L) == 21 else delta_L)).astype(int), step)


def slab_mass(slab):
    if slab.get("mass_kg_m2") is not None:
        return slab["mass_kg_m2"]
    mass = slab["thickness_mm"] * slab.get("density_kg_m3", 2400) / 1000 if "thickness_mm" in slab else 0
    return mass + sum(layer["thickness_mm"] * layer["density_kg_m3"] / 1000 for layer in slab.get("layers", []))


def correction(room, mass):
    """K of DIN 4109-2:2018 for the room below; KT of DIN 4109 (handbook Schallschutz - Bauakustik) elsewhere."""
    position = room.get("below", {}).get("position", "below")
    if position != "below":
        return 0, {"beside_or_diagonal": 5, "room_between": 10, "above_walls": 10, "above_frame": 20, "beyond_joint": 15}[position]
    walls = [wall.get("mass_kg_m2") or wall["thickness_mm"] * wall["density_kg_m3"] / 1000
             for wall in room["flanking"] if not wall.get("lined") and not wall.get("lightweight")]
    mean = sum(walls) / len(walls)
    return (0 if mean > mass else 0.6 + 5.5 * math.log10(mass / mean)), 0


def stack_of(layers):
    """Sums over the layers; springs in series (Lehrbuch der Bauphysik, ch. 22)."""
    def loaded(layer):
        return layer.get("loaded_thickness_mm", layer["thickness_mm"] - layer.get("compressibility_mm", 0))

    def stiffness(layer):
        """From specimen to laid layer (ISO 9052-1): between 10 and 100 kPa s/m2 the air trapped in it adds 111/d."""
        if "dynamic_stiffness_MN_m3" in layer:
            return layer["dynamic_stiffness_MN_m3"]
        middle = 10 <= layer["flow_resistivity_kPa_s_m2"] < 100
        return layer["apparent_stiffness_MN_m3"] + (111 / loaded(layer) if middle else 0)

    def compressed(layer):
        return layer.get("compressibility_mm", layer["thickness_mm"] - loaded(layer))

    return {
        "stiffness": 1 / sum(1 / stiffness(layer) for layer in layers),
        "thickness": sum(layer["thickness_mm"] for layer in layers),
        "loaded": sum(map(loaded, layers)),
        "compressibility": sum(map(compressed, layers)),
        "mass": sum(layer.get("mass_kg_m2", 0) for layer in layers),
        "load_limit": min(layer.get("imposed_load_limit_kN_m2", math.inf) for layer in layers),
        "lap": loaded(layers[0]) if layers[0].get("joint") == "lapped" else 0,
        "report": layers[0].get("test_report") if len(layers) == 1 else None,
        "layers": layers,
    }


def floating(stack, screed, thickness, with_bands=True):
    """f0 of EN ISO 12354-2; improvement per band by Vigran, Building Acoustics, 2008 (mineral) and EN ISO 12354-2,
    Annex C; weighted improvement by Lehrbuch der Bauphysik, ch. 22, eq. 22.69 and 22.70."""
    mass, stiffness, law = thickness * screed["dry_density_kg_m3"] / 1000, stack["stiffness"], screed.get("law", "mineral")
    f0 = 160 * math.sqrt(stiffness / mass)
    result = {"screed_mass_kg_m2": mass, "stiffness_MN_m3": stiffness, "f0_Hz": f0}
    if with_bands:
        bands = (30 if law == "mineral" else 40) * np.log10(FREQUENCY / f0)
        result["delta_L_dB"] = np.maximum(0, bands)
    test = stack["report"]
    if test and test.get("law", "mineral") == law and abs(mass - test["screed_mass_kg_m2"]) <= REPORT_PERCENT / 100 * test["screed_mass_kg_m2"] + 1e-9:
        spectrum = test.get("delta_L_dB")
        result["delta_Lw_dB"] = test["delta_Lw_dB"] if test.get("delta_Lw_dB") is not None else rated_improvement(np.array(spectrum), 10)
        result["delta_Lw_by"] = "test report"
        if spectrum and with_bands:
            spectrum = np.array(spectrum)
            result["delta_L_dB"] = spectrum if len(spectrum) == 21 else np.concatenate([[0, 0, 0], spectrum, [spectrum[-1]] * 2])
    elif law == "mineral":
        result["delta_Lw_dB"] = 13 * math.log10(mass) - 14.2 * math.log10(stiffness) + 20.8
        result["delta_Lw_by"] = "formula"
    else:
        result["delta_Lw_dB"] = (-0.21 * mass - 5.45) * math.log10(stiffness) + 0.46 * mass + 23.8
        result["delta_Lw_by"] = "formula"
    if with_bands:
        result["delta_Lw_rated_dB"] = rated_improvement(result["delta_L_dB"], 1)
    return result


def flooring_of(project, room):
    build_up = next((each for each in project.get("build_ups", []) if each["id"] == room.get("build_up")), {})
    name = room.get("flooring") or build_up.get("flooring")
    return by_id(FLOORINGS, name) if name else {}


def requirement_of(project, room):
    wanted = room.get("requirement") or project.get("requirement")
    if not wanted:
        return None
    limit = LIMITS[wanted["limit"]] if "limit" in wanted else wanted
    allowance = next((each["allowance_dB"] for each in (wanted, project.get("requirement", {}), limit) if "allowance_dB" in each), 0)
    return {"descriptor": limit["descriptor"], "value_dB": limit["value_dB"], "allowance_dB": allowance,
            "volume_rule": limit.get("volume_rule", "0.032 V"), "limit": limit}


def level_below(project, room, delta_Lw):
    """EN ISO 12354-2, simplified model; the bare slab 164 - 35 lg m' (Lehrbuch der Bauphysik, ch. 22);
    L'nT,w = L'n,w - 10 lg(0.032 V) with T0 0.5 s."""
    mass = slab_mass(room["slab"])
    bare = room["slab"].get("Ln_w_eq_dB") or 164 - 35 * math.log10(mass)
    K, KT = correction(room, mass)
    L_n = bare - delta_Lw + K - KT
    below = room.get("below", {})
    volume = below.get("volume_m3") or (below["area_m2"] * below["height_m"] if "area_m2" in below else None)
    held = requirement_of(project, room)
    L_nT = None
    if volume:
        L_nT = L_n - 10 * math.log10(volume / 30 if held and held["volume_rule"] == "V/30" else 0.032 * volume)
    margin = None
    if held:
        level = L_nT if held["descriptor"] == "L_prime_nT_w" else L_n
        margin = int(tenths(held["value_dB"]) - tenths(level + held["allowance_dB"])) / 10
    return {"slab_mass_kg_m2": mass, "Ln_eq_w_dB": bare, "K_dB": K, "KT_dB": KT, "L_prime_n_w_dB": L_n, "L_prime_nT_w_dB": L_nT,
            "margin_dB": margin, "meets_limit": margin >= 0 if held else None,
            "allowance_dB": held["allowance_dB"] if held else None}


def predicted(project, room):
    build_up = by_id(project["build_ups"], room["build_up"])
    stack = stack_of([by_id(UNDERLAYS, name) for name in build_up["underlays"]])
    floor = floating(stack, by_id(SCREEDS, build_up["screed"]["kind"]), build_up["screed"]["thickness_mm"])
    covering = flooring_of(project, room)
    covering = covering.get("delta_Lw_dB", 0) if covering.get("kind") == "soft" else 0
    if covering > floor["delta_Lw_dB"]:
        floor.update(delta_Lw_dB=covering, delta_Lw_by="soft covering")
    return {**floor, **level_below(project, room, floor["delta_Lw_dB"])}


def differs(own, its):
    if isinstance(own, (str, bool)) or own is None or its is None:
        return own != its
    return not np.allclose(own, its, rtol=0, atol=TOLERANCE)


def printed(*arguments):
    done = subprocess.run([PROGRAM, *arguments, "--json"], stdout=subprocess.PIPE, timeout=120, check=False)
    return json.loads(done.stdout)


def check_predict(name):
    project, document = read("demo", name), printed("predict", os.path.join(TOP, "data", "demo", name))
    report(f"{name}: as many rooms", [] if len(project["rooms"]) == len(document["rooms"]) else ["not so"])
    for room, told in zip(project["rooms"], document["rooms"]):
        complaints = []
        for key, own in predicted(project, room).items():
            its = told["bands"][key] if key == "delta_L_dB" else told[key]
            if differs(own, its):
                complaints.append(f"{key}: {own} here, {its} there")
        report(f"{name}: {room['name']}", complaints)


# --- design


def fits(row, wanted):
    return all(row.get(key, "*") in ("*", wanted[key]) for key in ("kind", "strength_class") if key in row)


def carries(row, use):
    return use["area"] <= row.get("area_load_kN_m2", math.inf) + 1e-9 and use["point"] <= row.get("point_load_kN", math.inf) + 1e-9


def least_thickness(rules, screed, stack, use):
    """DIN 18560-2 as tables: the reason that refuses, or None; then the least nominal thickness for load and
    compressibility, over heating pipes and under tiles."""
    load_rows = [row for row in rules["rows"] if fits(row, screed)]
    load_rows = [row for row in load_rows if carries(row, use)]
    if not load_rows:
        return "no_rule", 0, 0, 0
    c = stack["compressibility"]
    extra_rows = [row for row in rules.get("compressibility", []) if fits(row, screed) and carries(row, use)]
    base = [row for row in load_rows if c <= row.get("compressibility_mm", math.inf) + 1e-9]
    extra = [row for row in extra_rows if c <= row["compressibility_mm"] + 1e-9]
    if not base or (rules.get("compressibility") and not extra):
        return "compressibility", 0, 0, 0
    plain = base[0]["thickness_mm"] + (extra[0]["increment_mm"] if extra else 0)
    thin = [row for row in rules.get("thin_insulation", []) if fits(row, screed) and stack["thickness"] <= row["insulation_mm"] + 1e-9]
    if thin:
        plain -= max(0, min(thin[0]["reduction_mm"], plain - thin[0]["least_mm"]))
    heated = 0
    if use["pipe"]:
        cover = [row["cover_mm"] for row in rules.get("cover", []) if fits(row, screed)]
        heated = max([plain] + cover[:1]) + use["pipe"]
    tile = [row["thickness_mm"] for row in rules.get("tile", []) if fits(row, screed)] if use["tiles"] else []
    return None, plain, heated, (tile + [0])[0]


def stacks():
    found = [[row] for row in UNDERLAYS]
    for lower in UNDERLAYS:
        found += [[upper, lower] for upper in UNDERLAYS if upper["id"] in lower.get("may_lie_under", [])]
    return [stack_of(layers) for layers in found]


def reason_against(project, room, stack, screed, thickness, use, flooring, covering):
    """The first constraint that the candidate breaks in the documented order, or its three merits."""
    rules = RULES[requirement_of(project, room)["limit"].get("thickness_rules", "din-18560-2")]
    if use["area"] > stack["load_limit"] + 1e-9:
        return "imposed_load", None
    if screed["kind"] == "AS" and not all(layer.get("bears_hot_asphalt") for layer in stack["layers"]):
        return "heat", None
    refused, plain, heated, tile = least_thickness(rules, screed, stack, use)
    if refused:
        return refused, None
    services = room.get("services", {})
    levelling = services.get("levelling_mm", services.get("crown_mm", 0))
    height = levelling + stack["loaded"] + thickness + flooring.get("thickness_mm", 0)
    mass = (levelling * services.get("levelling_density_kg_m3", 1000) / 1000 + flooring.get("mass_kg_m2", 0)
            + stack["mass"] + thickness * screed["wet_density_kg_m3"] / 1000)
    single = next((thickness - row["below_nominal_mm"] for row in rules.get("single_place", []) if thickness <= row["nominal_mm"] + 1e-9), thickness)
    drain = room.get("drain")
    fall = 10 * drain.get("fall_percent", 2) * drain.get("distance_m", 1.5) if drain else 0
    delta_Lw = max(covering, floating(stack, screed, thickness, with_bands=False)["delta_Lw_dB"])
    margin = level_below(project, room, delta_Lw)["margin_dB"]
    failed = (
        ("thickness", plain - thickness),
        ("heated_cover", heated - thickness),
        ("tiles", tile - thickness),
        ("pipes", services.get("crown_mm", 0) - levelling),
        ("lap", single - (thickness - stack["lap"]) if stack["lap"] else 0),
        ("drain", plain - (thickness - fall) if fall else 0),
        ("height", height - room.get("available_height_mm", math.inf)),
        ("load", mass * 9.81 / 1000 - room.get("allowed_added_load_kN_m2", math.inf)),
        ("sound", -margin),
    )
    return next((name for name, excess in failed if excess > 1e-9), None), (height, mass, -margin)


def designed(project, room):
    given, flooring = room.get("use", {}), flooring_of(project, room)
    use = {"area": given.get("area_load_kN_m2", 2), "point": given.get("point_load_kN", 1), "tiles": flooring.get("tiles", False),
           "pipe": given.get("heating_pipe_mm", 16) if given.get("heating") == "pipes_in_screed" else 0}
    covering = flooring.get("delta_Lw_dB", 0) if flooring.get("kind") == "soft" else 0
    reasons, passing, examined = {}, [], 0
    for stack in stacks():
        for screed in SCREEDS:
            for thickness in np.arange(screed["thinnest_mm"], screed["thickest_mm"] + 1e-9, screed["step_mm"]):
                examined += 1
                reason, merits = reason_against(project, room, stack, screed, float(thickness), use, flooring, covering)
                if reason:
                    reasons[reason] = reasons.get(reason, 0) + 1
                else:
                    passing.append(merits)
    merits = np.array(passing).reshape(-1, 3)
    # What is in no merit worse than a candidate beats it; among equals the first stays.
    kept = 0
    for i, own in enumerate(merits):
        as_good = (merits <= own).all(axis=1)
        better = as_good & (merits < own).any(axis=1)
        kept += not (better.any() or as_good[:i].any())
    return {"examined": examined, "rejected": reasons, "choices": kept, "beaten": len(passing) - kept}


def check_design(name):
    project, document = read("demo", name), printed("design", os.path.join(TOP, "data", "demo", name))
    for room, told in zip(project["rooms"], document["rooms"]):
        own = designed(project, room)
        its = {"examined": told["examined"], "rejected": {each["reason"]: each["count"] for each in told["rejected"]},
               "choices": len(told["choices"]), "beaten": told["beaten"]}
        report(f"{name}: design of {room['name']}", [f"{key}: {own[key]} here, {its[key]} there" for key in own if own[key] != its[key]])


for demo in ("first-room.json", "linden-court.json", "retrofit.json"):
    check_predict(demo)
    check_design(demo)
print(f"1..{len(results)}")
