"""English: every sentence of the core.

Keys are grouped by their first word. ``{names}`` stand for quantities, which arrive already
worded. A mechanic reads these under a car: the number first, then what it means, then what
to do.
"""

from __future__ import annotations

from sweepsheet.words.messages import Language

TABLE: dict[str, str] = {
    # Pieces
    "number.decimal_mark": ".",
    "unit.thou": "thou",
    "unit.thou_one": "thou",
    "unit.mm": "mm",
    "unit.mm_one": "mm",
    "unit.slope.inch": "thou an inch",
    "unit.slope.metric": "mm a metre",
    "clock.hour": "{hour} o'clock",
    "clock.hour_one": "{hour} o'clock",
    "clock.time": "{time}",
    "clock.time_one": "{time}",
    "clock.low": "{hour}",
    "clock.low_one": "{hour}",
    "clock.between": "{time} (between {low} and {high})",
    "chance.over": "over 99%",
    "chance.under": "under 1%",
    "list": "{first} and {last}",
    "side.0": "up",
    "side.1": "up and right",
    "side.2": "right",
    "side.3": "down and right",
    "side.4": "down",
    "side.5": "down and left",
    "side.6": "left",
    "side.7": "up and left",
    "sign.plus": "plus",
    "sign.minus": "minus",
    "sense.high": "high",
    "sense.low": "low",
    "sweep.only": "the {what} sweep",
    "sweep.numbered": "{what} sweep {n}",
    "what.bore": "bore",
    "what.face": "face",
    "what.pilot_bore": "pilot bore",
    "what.crank_flange": "crank flange",
    "what.flywheel_face": "flywheel face",
    "field.housing.pilot_bearing.bronze_bushing": "a bronze bushing",
    "field.housing.pilot_bearing.needle": "a needle bearing",
    "field.housing.pilot_bearing.ball": "a ball bearing",
    "field.housing.pilot_bearing.cylindrical_roller": "a cylindrical roller bearing",
    "field.housing.pilot_bearing.tapered_roller": "a tapered roller bearing",
    # What was found in a field
    "got.nothing": "nothing",
    "got.value": "{value}",
    "got.text": "'{value}'",
    "got.huge": "a far larger number",
    "got.list": "a list",
    "got.object": "a group of fields",
    "got.other": "something else",
    # What is wanted in a field
    "fault.json": "This is not a job file: {why}.",
    "fault.too_big": "This is larger than any job: {got} characters; {high} are allowed.",
    "fault.too_deep": "This is nested more deeply than any job.",
    "fault.format": "This is not a job file of ours: the format '{wanted}' is wanted, got {got}",
    "fault.version": "job file version {wanted} is wanted, got {got}",
    "fault.version_newer": (
        "this job was written by a newer release (version {got}); this one reads version "
        "{wanted}. Update, then open it again"
    ),
    "fault.object": "{name}: a group of fields is wanted, got {got}",
    "fault.unknown": "{name} is not a field of a job",
    "fault.list": "{name}: a list is wanted, got {got}",
    "fault.count": "{name}: {low} to {high} of them are wanted, got {got}",
    "fault.number": "{name}: a number is wanted, got {got}",
    "fault.range": "{name}: from {low} to {high} is wanted, got {got}",
    "fault.choice": "{name}: one of {choices} is wanted, got {got}",
    "fault.text": "{name}: text is wanted, got {got}",
    "fault.text_long": "{name}: at most {high} characters are wanted, got {got}",
    "fault.text_control": "{name}: holds characters that can't be shown",
    "fault.readings": "{name}: {wanted} readings are wanted, one a position, got {got}",
    "fault.part_twice": "{kind} is there twice: give all its sweeps together",
    "fault.same_hole": "{name}: two different places are wanted",
    "fault.same_position": "{at} is there twice: every position is wanted once",
    "fault.few_readings": "sweep {n}: at least three readings are wanted, got {got}",
    "fault.half_turn": (
        "sweep {n}: all its readings lie within half a turn. Readings on the other side are "
        "wanted too"
    ),
    "fault.position": (
        "{name}: a clock position such as 3 or 10:30, or degrees such as 45°, is wanted, got {got}"
    ),
    "fault.turn": "a whole turn of the pointer: a number above 0 is wanted, got {got}",
    "fault.all_round": (
        "{name}: the dial shows 0 and up to below {turn}. A reading on it is wanted, but not {half}, "
        "which may be either side of zero; or one typed with its sign. Got {got}"
    ),
    "fault.marks": "Number of marks: a whole number from {low} to {high}, not {got}",
    "mark.plain": "{at}",
    "mark.bolt": "bolt {n}: {at}",
    "mark.wheel": "{turned}: {at}",
    "fault.whole": "{name}: a whole number is wanted",
    "fault.aim": "An aim is wanted, such as 10:30 or 315°",
    # Names of fields
    "name.job": "the job",
    "name.units": "units",
    "name.about.vehicle": "vehicle",
    "name.about.engine": "engine",
    "name.about.gearbox": "gearbox",
    "name.about.housing": "housing",
    "name.about.shop": "shop",
    "name.about.technician": "technician",
    "name.about.customer": "customer",
    "name.about.date": "date",
    "name.about.notes": "notes",
    "name.limits.bore_offset": "bore limit",
    "name.limits.face_runout": "face limit",
    "name.limits.face_radius": "radius of the face limit",
    "name.limits.pilot_offset": "pilot limit",
    "name.limits.confidence": "confidence",
    "name.limits.source": "source of the limits",
    "name.indicator.step": "smallest step of the dial",
    "name.indicator.accuracy": "accuracy of the dial",
    "name.indicator.repeatability": "repeatability",
    "name.indicator.plus_when": "when the dial reads plus",
    "name.indicator.contact_angle_deg": "contact angle",
    "name.indicator.holder": "what holds the dial",
    "name.indicator.sag": "sag test",
    "name.indicator.sag_allowance": "most the sag may be",
    "name.indicator.angle_setting_deg": "setting of the crank",
    "name.crank.axis": "crank axis",
    "name.crank.lift": "crank lift",
    "name.housing.depth": "depth of the housing",
    "name.housing.plate_thickness": "thickness of the block plate",
    "name.housing.pilot_distance": "distance to the pilot bearing",
    "name.housing.tail_distance": "distance to the gearbox tail",
    "name.housing.pilot_bearing": "pilot bearing",
    "name.housing.tilt_from": "which side is out of square",
    "name.housing.bore_diameter": "diameter of the bore",
    "name.housing.register_diameter": "diameter of the gearbox register",
    "name.housing.dowel_holes": "dowel holes",
    "name.housing.bolts": "bolts",
    "name.housing.bolt_clearance": "clearance of the bolts",
    "name.housing.dowel_clearance": "clearance of the dowels",
    "name.hole.at_deg": "hole {n}, clock angle",
    "name.hole.radius": "hole {n}, distance from the crank axis",
    "name.stock.dowel_offsets": "dowels in stock",
    "name.stock.aim_setting_deg": "setting of the aim",
    "name.stock.aim_for": "what the dowels are aimed for",
    "name.stock.shim_thicknesses": "shims in stock",
    "name.dowel offset": "dowel size {n} in stock",
    "name.shim": "shim {n} in stock",
    "name.chip.joint": "joint of the chip",
    "name.chip.height": "height of the chip",
    "name.chip.at_deg": "clock angle of the chip",
    "name.chip.radius": "radius of the chip",
    "name.job name": "name of the job",
    "name.checklist": "checklist",
    "name.companions": "companion sweeps",
    "name.companion.kind": "part that was swept",
    "name.companion.limit": "limit of the part, TIR",
    "name.rounds": "rounds",
    "name.round.name": "name of the round",
    "name.dowels": "fitted dowels",
    "name.fitted.offset": "fitted dowel {n}, offset",
    "name.fitted.aim": "fitted dowel {n}, aim",
    "name.contact": "where the dial touches",
    "name.face.radius": "radius of the face sweep",
    "name.face.plunger": "which way the plunger points",
    "name.face.end_float": "end float of the crank",
    "name.face.opposite": "second dial",
    "name.exercise.seed": "number of the exercise",
    "name.exercise.level": "level of the exercise",
    "name.exercise.positions": "number of positions",
    "name.exercise.part": "what the dial touches",
    "name.exercise.rounds": "number of rounds",
    "name.bore.contact": "where the dial touches",
    "name.turn": "which way the crank is turned",
    "name.positions": "positions",
    "name.position": "position {n}",
    "name.sweeps": "sweeps",
    "name.sweep": "sweep {n}",
    "name.reading": "{at} reading",
    "name.reading of sweep": "{at} reading of sweep {n}",
    "name.closing": "return to zero",
    "name.closing of sweep": "return to zero of sweep {n}",
    # The checklist
    "checklist.preparation": "Preparation",
    "checklist.faces_clean": "Joint faces of block and housing clean and flat.",
    "checklist.nothing_proud": "Nothing stands proud: no burr, no paint, no remains of an old dowel.",
    "checklist.parts_in_place": (
        "Every part that will be between block and housing in the end is in place."
    ),
    "checklist.bolts_even": "Bolts of the housing evenly tight.",
    "checklist.indicator_stiff": (
        "Indicator stiff in its bracket, square to what it touches, free, not near the end of its "
        "travel."
    ),
    "checklist.end_float": "End play held: crank pushed to its stop one way, let go, at every stop; or two dials.",
    "checklist.car_safe": (
        "Car on proper stands, battery off, helper told before each turn of the crank."
    ),
    "checklist.fit": "How to fit the dowels",
    "checklist.dowels_out": "Old dowels pulled: by the grip, or driven from the far side.",
    "checklist.holes_clean": "Dowel holes clean, no burr.",
    "checklist.sides_marked": "High side scribed on each end face.",
    "checklist.dowels_aimed": "Pressed in, each mark at its aim, seen from behind.",
    "checklist.housing_on": "Housing slipped on by hand, not drawn on with the bolts.",
    "checklist.fit_torqued": "Bolts torqued crosswise, as before.",
    "checklist.dowels_engage": "Dowels reach deep enough into the housing.",
    "checklist.bolts_start": "Every bolt starts by hand.",
    "checklist.trim": "How to turn the dowels",
    "checklist.bolts_loose": "Housing bolts loose.",
    "checklist.dowels_turned": "Both dowels turned the same way by the same angle.",
    "checklist.trim_torqued": "Bolts torqued crosswise again, as before.",
    "checklist.closing_up": "Closing up",
    "checklist.dowels_secured": "Dowels secured, so that they can neither turn nor walk out.",
    "checklist.bolts_torqued": "Bolts torqued to the maker's figures.",
    "checklist.swept_again": "Swept once more after the final tightening.",
    "checklist.pilot_and_clutch": "Pilot bearing and clutch looked at.",
    "checklist.slid_home": "Gearbox slid home by hand, never drawn in by its bolts.",
    "checklist.crank_turns": "Crank turns freely.",
    "checklist.record_given": "Record handed over.",
    # Findings
    "finding.closing-error": (
        "After the full turn of {sweep} the dial was {error} off; up to {most} can pass. Do not "
        "trust this sweep: find what slipped or stuck, and sweep again."
    ),
    "finding.closing-spread": (
        "After the full turn of {sweep} the dial was {error} off. It was spread evenly over the "
        "readings."
    ),
    "finding.closing-missing": (
        "Nobody wrote down what the dial showed after the full turn of {sweep}. Turn on to where "
        "you began: it must come back to where it was."
    ),
    "finding.foreign-reading": (
        "The {what} reading at {at} does not belong: it is {excess} too {sense} for what the others say. "
        "Take it again before you act."
    ),
    "finding.earlier-unreliable": (
        "Round {n}: its {what} sweep can't be trusted, and does not count for what is said here."
    ),
    "finding.sweeps-disagree": (
        "The {what} sweeps differ by up to {excess} at {at}, more than the dial explains. Something "
        "moves: check the bracket, the end float and the contact."
    ),
    "finding.out-of-round": (
        "The bore is out of round: {tir} TIR besides the offset, the dial highest near {at} and "
        "{opposite}. Look for a burr, dirt or damage there."
    ),
    "finding.pair-sums": (
        "{first} plus {second} and {third} plus {fourth} differ by {difference}; in a round bore "
        "they agree. One reading is wrong or the bore is out of round: four positions can't tell. "
        "Sweep again with eight."
    ),
    "finding.not-reached": "No {what} reading at {at}: it is worked out from the other {left}.",
    "finding.no-check": (
        "Three {what} readings always fit: nothing shows a mistake in one of them. Add a fourth if you "
        "can reach it."
    ),
    "finding.looks-like-inches": (
        "The largest {what} reading is {largest}: that looks like inches. Readings are wanted in thou: "
        "0.004 in is 4."
    ),
    "finding.no-limit": "No limit entered for the bore. Enter the manufacturer's.",
    "finding.undecided": ("Too close to call: {offset} ± {pm} against {limit}. {settle}"),
    "finding.too-coarse": "Even a perfect bore could not be shown to hold {limit} with readings as coarse as these.",
    "finding.limit-source": (
        "The limit is common practice ({limit} offset). Your manual's figure comes first."
    ),
    "finding.direction-unknown": (
        "The offset is no larger than what the readings are worth, so its direction means nothing."
    ),
    "finding.droop-unmeasured": (
        "The sag of the holder was not measured. It makes the bore read high, never low: up to {most} "
        "top to bottom. Half is taken out, the rest is doubt. A sag test tells."
    ),
    "finding.dowels-differ": (
        "The two dowels now fitted differ in offset or aim. What a change of dowels would do is "
        "not worked out for such a pair."
    ),
    "finding.no-stock": (
        "No offset dowels in the drawer. A pair of about {wanted} offset is needed."
    ),
    "finding.beyond-stock": (
        "Beyond dowels: even the largest in the drawer ({largest}) would leave {expected}. Look for "
        "the cause first: dirt or a burr in the joint, a wrong or bent housing, a dial read wrongly."
    ),
    "finding.stock-doubtful": (
        "The best pair that goes in is not sure to bring it within: it should leave {expected}."
    ),
    "finding.between-sizes": (
        "No size in the drawer fits: the best leaves {expected}. A pair of about {size} offset would do."
    ),
    "finding.unlike-reach": (
        "No equal pair in the drawer fits. Two unlike dowels should leave {expected}: see their table. "
        "A pair of about {size} offset would do, too."
    ),
    "finding.face-not-swept": "Sweep the rear face too, and put it right first: squaring the face can move the bore.",
    "finding.face-not-trusted": (
        "Sweep the face again: push the crank to its stop one way, let go, read. End play reads "
        "as tilt, so this face is not judged."
    ),
    "finding.no-face-limit": "No limit entered for the face. Enter the manufacturer's.",
    "finding.face-changed": (
        "The face leans otherwise than in round {n}, by {change}: something moved in the joint. "
        "Loosen, clean, torque, sweep again."
    ),
    "finding.face-first": (
        "Face first: its runout is {runout} ± {pm} against {limit}. Look for a burr or dirt in "
        "the joint and sweep it again. What is said of dowels here does not hold after the face "
        "was squared."
    ),
    "finding.face-undecided": (
        "The face is too close to call: runout {runout} ± {pm} against {limit}. {settle} Do not shim "
        "or cut it."
    ),
    "finding.face-warp": (
        "The face is not flat, or a reading is off: of {total} TIR on the dial only {tilt} is tilt; "
        "{rest} is left over. Shims and dowels don't cure that."
    ),
    "finding.face-tir-over": (
        "The dial's own TIR of {total} is over the limit of {limit}, though the tilt in it is not. "
        "Look for a burr or a warped face."
    ),
    "finding.face-swings-bore": (
        "Squaring the face is expected to swing the bore by {move}: from {before} to {after} offset."
    ),
    "finding.face-may-swing-bore": (
        "If the housing is tipped at the block, squaring it swings the bore by {move}: from "
        "{before} to {after} offset. If its rear face is cut crooked, the bore stays."
    ),
    "finding.depth-wanted": (
        "Enter the depth of the housing to see how far squaring the face swings the bore."
    ),
    "finding.bolts-wanted": "Enter where the bolts are to see what to put under each.",
    "finding.shims-short": (
        "Your shims fall short at {at}: {wanted} needed, three of the thickest are {most}."
    ),
    "finding.holes-wanted": (
        "Enter where the dowel holes are to see what two unlike dowels could do."
    ),
    "finding.chip-explains": (
        "A chip or burr of {height} at the rim of the front flange, near {at}, would explain "
        "all of this tilt. Look there first."
    ),
    "finding.too-thick-for-dirt": (
        "It would take {height} at the rim near {at} to make this tilt: too thick for dirt. "
        "Look for a proud dowel, a bent flange, a wrong part."
    ),
    "finding.pilot-distance-wanted": (
        "Enter the distance from the rear face to the pilot bearing to see what this does there."
    ),
    "finding.aim-for-bore": "The dowels are aimed for the bore: for the pilot bearing a face sweep without end play and the distance to it are needed.",
    "finding.pilot-outside": (
        "At the pilot bearing the gearbox axis is {offset} ± {pm} off against {limit}: outside."
    ),
    "finding.pilot-undecided": (
        "At the pilot bearing it is too close to call: {offset} ± {pm} off against {limit}."
    ),
    "finding.angle-near": (
        "The gearbox axis is {angle} out of line, surely no more than {sure}. That much matters: "
        "{bearing} takes {careful} to {generous}. The manufacturer's figure comes first."
    ),
    "finding.angle-beyond": (
        "The gearbox axis is {angle} out of line (it may be {sure}): more than {bearing} takes, "
        "{careful} to {generous}. The manufacturer's figure comes first."
    ),
    "finding.interference": (
        "The gearbox register is {tight} larger than the bore: it does not go in. Measure both "
        "again, and don't draw it in with the bolts."
    ),
    "finding.seat-loose": (
        "The bore is within, but the gearbox has {clearance} clearance in it and may sit {half} "
        "off. Chance that the finished joint is inside: {chance}."
    ),
    "finding.moved-wrong-way": (
        "The bore went the wrong way: {size} toward {direction}, opposite to the aim. Before you "
        "turn anything, check {causes}."
    ),
    "finding.moved-mirrored": (
        "The bore went as if 3 and 9 were swapped: {size} toward {direction}, aimed at {aim}. Were aim "
        "or readings taken from the front? Find out before you turn anything."
    ),
    "cause.aim": "the aim of the dowels (other side?)",
    "cause.sense": "the dial's plus and minus",
    "cause.before": "the dowels entered for the first sweep",
    "cause.sides": "which side is 3 o'clock (seen from behind)",
    "finding.moved-otherwise": (
        "Moved {size} ± {pm} toward {direction}; expected {told} toward {aim}. Look first: was the "
        "aim entered as fitted, not as planned? Is the housing seated?"
    ),
    "finding.trim-noise": (
        "Turning the dowels would gain {gain}, less than the {pm} that the readings are worth. It "
        "can't be seen whether it helps."
    ),
    "size.stock": "stock",
    "finding.trim-other-size": (
        "Another size is better: {size} dowels should leave {after}, these at best {trimmed} after "
        "a turn of {turn}."
    ),
    "finding.bolt-holes": (
        "The bolt holes are too tight: {size} dowels need {wanted} clearance on the diameter, and "
        "there is {clearance}."
    ),
    "finding.companion-outside": (
        "The {what} runs out: {tir} ± {pm} TIR against {limit}. It turns with the crank: moving the "
        "housing does not cure it."
    ),
    "finding.companion-end-play": (
        "End play goes straight into the {what} sweep: push the crank to its stop one way, let "
        "go, read, at every stop."
    ),
    "finding.companion-undecided": (
        "The {what} is too close to call: {tir} ± {pm} TIR against {limit}. It turns with the "
        "crank: moving the housing does not cure it."
    ),
    "settle.could": "To settle it, {measure}: ± {now} becomes about ± {then}.",
    "settle.helps": "What gains most: {measure} (± {now} becomes about ± {then}). It takes more than that.",
    "settle.none": "No practical measuring will settle it.",
    "settle.positions": "sweep at eight positions",
    "settle.sweep": "sweep once more",
    "settle.dial": "use a dial that reads to {step}",
    "settle.sag": "do a sag test",
    # The page
    "fault.request": "The page asked for something that is not a filled-in form.",
    "page.unfinished": "Sweep {n} of the {what} is not finished, and does not count yet.",
    "what.of_round": "{what} in round {n}",
    "page.waiting": "Still wanted: the reading at {positions}.",
    # The answer
    "answer.offset": "Offset {offset} (TIR {tir}) toward {direction}",
    "answer.offset_nowhere": "Offset {offset} (TIR {tir}), direction not known",
    "answer.pm": "± {pm} (95% sure)",
    "answer.swing": "Quick check: the needle's whole swing should be near {swing}",
    "answer.direction_pm": "{degrees} clockwise from 12 (± {pm}), seen from behind",
    "answer.limit": "Limit: offset {offset}, which is TIR {tir}",
    "answer.no_limit": "No limit",
    "answer.chance_face": "Chance that the face is inside the limit: {chance}",
    "answer.chance_pilot": "Chance that the pilot line is inside the limit: {chance}",
    "answer.chance": "Chance that the bore is inside the limit: {chance}",
    "answer.verdict.within": "Within the limit",
    "answer.verdict.outside": "Outside the limit",
    "answer.verdict.undecided": "Too close to call",
    "answer.verdict.within_but_face": "Bore within, face outside",
    "answer.verdict.again": "Not to be trusted: sweep again",
    "answer.verdict.none": "No limit to judge by",
    "do.fix.looks-like-inches": "Type the {what} readings in thou: 0.004 in is 4.",
    "do.fix.foreign-reading": "Take the {what} reading at {at} again.",
    "do.fix.closing-error": (
        "Find what slipped or stuck: after {sweep} the dial was {error} off. Then sweep again."
    ),
    "do.fix.moved-wrong-way": (
        "Find out which is wrong: the aim of the dowels, or plus and minus of the dial. Turn "
        "nothing before that."
    ),
    "do.fix.moved-mirrored": (
        "Find out whether aim or readings were taken from the front: 3 and 9 seem swapped. Turn "
        "nothing before that."
    ),
    "do.fix.interference": (
        "Measure bore and register again. Do not draw the gearbox in with its bolts."
    ),
    "do.note-return": "Turn on to the start of {sweep}, and enter by how much the dial is off there.",
    "do.sweep-face": "Sweep the rear face too, before any dowel: squaring it can move the bore.",
    "do.resweep-face": "Sweep the face again: push the crank to its stop one way, let go, read.",
    "do.settle-face": "Measure the face again before you turn to the bore. {settle}",
    "do.face-at-limit": (
        "The face is at its limit, and measuring will not settle it. Do not cut or shim it."
    ),
    "do.clean-joint": (
        "The face is out. Loosen the housing, clean the joint, look for a burr or a proud edge. "
        "Torque it as before, and sweep face and bore again as a recheck."
    ),
    "do.sweep-face-twice": "The tilt came back. Sweep the face once more before anything is cut: the same answer?",
    "do.steady-the-dial": "The {what} sweeps differ: something moves. Tighten bracket and base, check end play and contact, and sweep twice again. If nothing is loose, enter a larger scatter of the dial.",
    "do.find-tilt-cause": "The tilt came back on a clean joint. Take the housing off and look at both joint faces; what lay between them is the cause: sweep again. Else stand it on its front flange on a surface plate, sweep the rear face, and enter which side is out under Dimensions.",
    "do.check-sense": "Before you shim or cut: push the plunger in by hand, the dial must go the way the form says. And look from behind: 3 o'clock is right.",
    "do.square-front": "Shim or machine the front flange as said under Squaring.",
    "do.square-rear": "Have the rear face machined as said under Squaring.",
    "do.start-anew": "Then begin a new job: sweep face and bore again before any dowel.",
    "do.face-not-flat": "The face is not flat: {rest} is left beside the tilt. Look for a burr or a nick, stone it off, and sweep the face again.",
    "do.sweep-eight": "Sweep the bore again, at eight positions: one reading is wrong, or the bore is not round.",
    "do.aim-for-pilot": "The bore is within, the pilot line is not. Choose to aim the dowels for the pilot bearing, to see what they can do there.",
    "do.pilot-stays-out": "The bore is within, the pilot line is not, and no dowels in the drawer put it right. See what squaring the face would do.",
    "do.mend-part": "Put right the {what} first, or replace it: it turns with the crank, and no housing cures that.",
    "do.no-limit": "Enter the manufacturer's limit: without one nothing is called within.",
    "do.leave": "Leave the housing where it is.",
    "do.tighten-and-sweep": (
        "Lock the dowels, torque the bolts as specified, and sweep once more as a recheck."
    ),
    "do.done": "Done: two sweeps in a row are within. Close up.",
    "do.settle-bore": "Measure again before you decide. {settle}",
    "do.or-fit": "Or move it now. {fit}",
    "do.cannot-settle": "No practical measuring will settle this.",
    "do.treat-as-out": "Treat it as out: nothing in the drawer is sure to leave less.",
    "do.back-to-stock": (
        "Go back to stock dowels and sweep again: what two unlike dowels do can't be told without "
        "their holes."
    ),
    "do.dowels-do-not-hold": "Six tries, and it does not stay within: the housing does not come to rest alike. Look at the fit of dowels and bolts.",
    "do.nothing-fits": "No pair in the drawer is sure to leave less than there is now.",
    "do.check-fit": "Look why the dowels did not do what is on them: is the housing seated on both, and each aimed as typed? Seat it again.",
    "do.open-holes": (
        "Open the bolt holes to {clearance} clearance on the diameter, if the manufacturer allows it: "
        "then {size} dowels do."
    ),
    "do.get-pair": "Get a pair of about {size} offset.",
    "do.get-size": "Get a pair of about {size} offset: the best in the drawer leaves {left}.",
    "do.beyond-dowels": (
        "Beyond dowels. Look for the cause: dirt in the joint, a wrong or bent housing, a dial read "
        "wrongly."
    ),
    "do.fit-unlike": "Fit two unlike dowels: {dowels}. Expected offset after: {expected}.",
    "do.unlike": "at {hole} the {size} one, aimed at {aim}",
    "do.unlike-stock": "at {hole} the stock one",
    "do.move": "Move the housing {side}, toward {direction}, by {offset}.",
    "do.reseat": "First loosen, clean the joint, torque as before and sweep once more: same answer?",
    "do.fit-dowels": (
        "Fit {offset} offset dowels, both aimed at {aim}. Expected offset after: {expected} "
        "(TIR {tir})."
    ),
    "do.standard-dowels": (
        "Go back to stock dowels. Expected offset after: {expected} (TIR {tir})."
    ),
    "do.recheck": "Then sweep again: the recheck decides, not this figure.",
    "glance.not_entered": "Not entered: {names}",
    "why.clean-joint": "Dirt or a burr in the joint tilts the face. No metal is cut for dirt.",
    "why.check-sense": "A wrong sign or a mirror view puts the cut on the wrong side.",
    "why.start-anew": "Shims and cuts move the bore too. Old readings no longer count.",
    "why.leave": "It is within. Another move risks more than it gains.",
    "why.tighten-and-sweep": "Torque can move the housing. Two sweeps in a row must agree.",
    "why.move": "The offset is half the TIR. The housing moves the other way.",
    "why.reseat": "Dirt in the joint reads like offset, and no dowel cures it.",
    "why.fit-dowels": "The housing moves by the offset, toward the high sides.",
    "why.trim": "Turning both dowels turns the way the housing was moved.",
    "why.recheck": "Holes and torque decide. Enter the aim as fitted, not as planned.",
    "option.leave": "leave as it is",
    "option.standard": "standard dowels",
    "option.tight": "{what} (bolt holes too tight)",
    "option.dowels": "{offset} dowels, aimed at {aim}",
    "option.expected": "{offset} (TIR {tir})",
    "level.stop": "STOP",
    "level.caution": "Caution",
    "level.note": "Note",
    # Parts of the sheet beside the bore
    "section.face": "Face",
    "section.squaring": "Squaring the face",
    "section.pilot": "At the pilot bearing",
    "section.seat": "Gearbox in the bore",
    "section.trim": "What the dowels did",
    "section.pairs": "Two unlike dowels",
    "section.chip": "What a chip would do",
    "section.companion": "Turning with the crank: {what}",
    "face.runout": "Runout of the tilt {runout} ± {pm}, at the radius swept",
    "face.rearmost": "Most rearward toward {direction}",
    "face.slope": "Slope {angle}",
    "face.not_judged": "Not judged: end play may be in it",
    "face.limit": "Limit: runout (TIR) {limit} at that radius",
    "face.total": "TIR on the dial {total}; beside the tilt {rest}",
    "squaring.find_out": (
        "Which side is out? Front flange down on a surface plate, sweep the rear face: parallel "
        "means that the block side is out, not parallel that the rear face is cut crooked. Or sweep "
        "the block's own face: the same tilt at the same clock there means that the block is out."
    ),
    "squaring.if_tipped": "If the housing is tipped at the block:",
    "squaring.if_crooked": "If its rear face is cut crooked:",
    "squaring.taper": "Off the front flange: {slope} across, deepest toward {at}",
    "squaring.recut": "Off the rear face: {slope} across, deepest toward {at}",
    "squaring.across": "Across the bolts that is {depth}",
    "squaring.bore": "Bore expected after: offset {offset} toward {direction}. Sweep it again.",
    "squaring.left": "Rounded to the stock, it leaves runout {runout}; the stacks rock by {rock}",
    "squaring.hang": (
        "Shims at the bolts alone leave the flange hanging between them: a tapered ring all round, "
        "or machining, is better. Check dowel engagement and starter mesh."
    ),
    "squaring.short": "{stack} (short)",
    "squaring.none": "none",
    "squaring.head.bolt": "Bolt at",
    "squaring.head.shim": "Shim",
    "squaring.head.ideal": "Exactly",
    "pilot.offset": "Gearbox axis off by {offset} ± {pm} toward {direction}",
    "pilot.offset_nowhere": "Gearbox axis off by {offset} ± {pm}, direction not known",
    "pilot.angle": "Out of line by {angle} ± {pm}",
    "seat.clearance": "Clearance {clearance}: the gearbox may sit up to {half} off",
    "seat.chance": "Chance that the finished joint is inside the limit: {chance}",
    "deed.moved": "The dowels moved the bore {size} ± {pm} toward {direction}",
    "deed.agrees": "That is what is written on them, as far as the readings can tell.",
    "trim.turn": (
        "Turn both dowels {turn} {way}, seen from behind, to aim at {aim} ({degrees}). Expected "
        "offset after: "
        "{expected} (TIR {tir})."
    ),
    "trim.chance": "Chance inside after that turn: {chance}",
    "trim.stop": "The bore is within: stop here.",
    "way.clockwise": "clockwise",
    "way.anticlockwise": "counterclockwise",
    "pairs.caution": (
        "For an expert: each dowel has its own size and aim, and both must be right. Mark them "
        "before you fit them, and sweep again."
    ),
    "pairs.turn": "The housing turns by up to {turn}° with them.",
    "pairs.head.dowel": "Dowel at {at}",
    "pairs.head.left": "Offset left",
    "pairs.head.misfit": "Spacing misfit",
    "pairs.head.chance": "Chance inside",
    "pairs.standard": "standard",
    "pairs.dowel": "{size}, aimed at {aim}",
    "joint.front": "under the front flange",
    "joint.rear": "on the rear face",
    "part.bore": "The bore",
    "part.nose": "The nose of the shaft",
    "part.tail": "The tail of the gearbox",
    "chip.what": "A chip of {height} at {at} {joint} tilts by up to {angle}.",
    "chip.moves": "{part} goes {move} toward {direction}.",
    "chip.still": "{part} stays where it is.",
    "chip.unknown": "{part}: enter the dimensions of the housing to see.",
    "chip.most": "Bolts that bend the flange round the chip make it less.",
    "companion.tir": "TIR {tir} ± {pm}, which is offset {offset}, toward its mark at {direction}",
    "companion.limit": "Limit: TIR {tir}",
    "companion.turns": "It turns with the crank: moving the housing does not change it.",
    # What the figures are: two sentences each
    "term.offset": "Offset",
    "term.tir": "TIR",
    "term.plus-minus": "±",
    "term.direction": "Direction",
    "term.limit": "Limit",
    "term.chance": "Chance",
    "term.left": "Offset left",
    "term.runout": "Runout",
    "term.rearmost": "Most rearward",
    "term.slope": "Slope",
    "term.total": "TIR beside the tilt",
    "term.taper": "Taper",
    "term.shim": "Shim",
    "term.swing": "Bore expected after",
    "term.gearbox-axis": "Gearbox axis",
    "term.out-of-line": "Out of line",
    "term.clearance": "Clearance",
    "term.finished-joint": "Finished joint",
    "term.moved": "Moved",
    "term.turn": "Turn",
    "term.unlike": "Unlike dowels",
    "term.misfit": "Spacing misfit",
    "term.chip": "Chip",
    "term.companion": "Turns with the crank",
    "means.offset": "How far the middle of the bore stands from the crank's axis. It is half of the TIR.",
    "means.tir": "Total indicator reading: how far a dial without sag would run in a whole turn, by the wave that fits the readings. It is twice the offset, so a limit given as TIR looks twice as large.",
    "means.plus-minus": "How far the figure may be off, with what you read and how. In 95 cases of 100 the true one lies no farther away.",
    "means.direction": "Toward which hour of the clock the bore is off, seen from behind the engine. The housing must go the opposite way.",
    "means.limit": "How far off the manufacturer allows the bore to be. Where you did not enter that figure, it is only common practice.",
    "means.chance": "How likely the true bore is inside the limit, when all doubt of the readings is counted. From {sure} up it is called within, from {rest} down outside, and between them nobody knows.",
    "means.left": "Where the bore is expected after that choice of dowels. The recheck on the dial decides whether it came so.",
    "means.runout": "How far a square dial runs on the leaning face in a whole turn, at the radius swept. At twice the radius the same lean gives twice the runout.",
    "means.rearmost": (
        "The side on which the face stands back toward the gearbox. There the housing is too "
        "long, something is under the front flange, the block's face is out of square, or the "
        "rear face is cut crooked."
    ),
    "means.slope": "How much the face leans for each inch or metre across. It does not depend on the radius at which you swept.",
    "means.total": "The dial's own run, and how much of it is not lean but warp, burr or a wrong reading. Shims and dowels don't cure that part.",
    "means.taper": (
        "What to machine off so that the rear face comes square. It is deepest on the side that "
        "stands rearward."
    ),
    "means.shim": "What to lay under the flange at each bolt, from your stock, to bring the face square. A stack that rocks is not flat over all the bolts.",
    "means.swing": (
        "Squaring a tipped housing swings the bore, by the lean times its depth; cutting a "
        "crooked rear face does not. So the bore is swept again before dowels are chosen."
    ),
    "means.gearbox-axis": "Where the line of the gearbox passes the pilot bearing. It takes in the bore's offset and the lean of the face times the distance.",
    "means.out-of-line": "The angle between gearbox and crank. A bearing stands only so much of it before its edge carries the load.",
    "means.clearance": "How much smaller the gearbox's register is than the bore it sits in. The gearbox may sit off by half of it, wherever the bore is.",
    "means.finished-joint": "The chance that the gearbox itself ends inside the limit, with its play in the bore counted. The bore may be within and the joint still be doubtful.",
    "means.moved": "How far and which way the bore went when the dowels were fitted, by your readings. It is compared with what is written on them.",
    "means.turn": "By how much to turn both dowels in their holes, seen from behind. It reckons with what they did, not with what is written on them.",
    "means.unlike": "Two dowels of different size or aim can bring the bore where no equal pair does. The housing then turns a little as well.",
    "means.misfit": "How much the two dowels pull the holes apart or together. It must stay inside their clearance, or the housing does not go on.",
    "means.chip": "A bit of dirt in the joint tilts what is bolted against it, and the tilt grows with the distance. These are the most it can move: a flange that bends round it moves less.",
    "means.companion": "The part's own runout: dial on the block, part turned under it. It goes round with the crank, so no dowel and no shim cures it.",
    # The sheet
    "sheet.title": "Bore sweep",
    "sheet.round": "Round {n}: {name}",
    "usual.first": "as found",
    "usual.later": "round {n}",
    "sheet.bore": "Bore: {readings}",
    "sheet.face": "Face: {readings}",
    "sheet.reading": "{at} {value}",
    "sheet.options": "What each choice would leave (offset in {unit}, TIR beside it):",
    "sheet.option": "{choice}: {expected}",
    "sheet.option_chance": "; inside: {chance}",
    "sheet.option_pilot": "; at the pilot bearing {pilot}",
    "sheet.section": "{title}: {verdict}",
    "sheet.findings": "To know:",
    "sheet.finding": "{level}: {text}",
    "sheet.caution": (
        "Seen from behind the engine, looking forward. The maker's limits, torques and procedure "
        "rule; support the engine, disconnect the battery, turn the crank by hand."
    ),
    # The practice housing
    "practice.title": "Exercise {seed}, level {level}",
    "practice.level.1": "The bore alone is off. Perfect dial, stiff bracket, square face.",
    "practice.level.2": "A bracket that droops, a dial that scatters, dowels with play.",
    "practice.level.3": "All that, and a face that leans.",
    "practice.dial_title": "The dial, magnified",
    "practice.dial": "a line is {step} {unit}, a turn {turn} {unit}",
    "practice.crank_title": "The housing from behind, with the dial carried by the crank",
    "practice.touches.inside": "The dial touches the bore from inside.",
    "practice.touches.outside": "The dial touches a spigot from outside.",
    "practice.touches.forward": "The dial touches the rear face, its plunger pointing forward.",
    "practice.touches.rearward": "The dial touches the face, its plunger pointing rearward.",
    "practice.spoken": "{at}: {reading}",
    "practice.note": "Note {reading} at {at}",
    "practice.note_closing": "Note {reading}, back at {at}",
    "practice.as_found": "As found",
    "practice.on_standard": "Recheck {n}: standard dowels",
    "practice.on_dowels": "Recheck {n}: {offset} dowels, aimed at {aim}",
    "practice.not_swept": "not swept",
    "practice.head.round": "Round",
    "practice.head.true": "In truth",
    "practice.head.found": "You found",
    "practice.head.off": "Off by",
    "practice.off": "{miss}: covered by the doubt of the readings",
    "practice.off_beyond": "{miss}: more than the doubt of the readings",
    "practice.mirrored": "the opposite way: a sign is turned round",
    "practice.runout": "Runout {runout}, most rearward toward {direction}",
    "practice.inside": "As it stands now, the bore is truly inside the limit of {limit}.",
    "practice.outside": "As it stands now, the bore is truly outside the limit of {limit}.",
    "practice.droop": "Droop of the bracket, bottom less top: {droop}",
    "practice.dowels": "The dowels do {gain}% of what is written on them, turned {lag}° {way}.",
    # The sheet on paper
    "paper.title": "Bellhousing and crankshaft: what was measured",
    "paper.view": "Seen from behind the engine, looking forward. TIR is twice the offset.",
    "paper.to_do": "What to do",
    "paper.found": "Limits and dial",
    "paper.doubts": "To know",
    "paper.done": "Looked after and ticked",
    "paper.open": "NOT ticked",
    "paper.signature": "Signature",
    "paper.link": "The same on a phone, worked out again from the readings:",
    "paper.caution": (
        "The maker's limits, torques and procedure rule; then local rules and qualified people."
    ),
    "paper.face_limit": "Limit for the face: runout (TIR) {runout} at the radius swept",
    "paper.face_limit_at": "Limit for the face: runout (TIR) {runout} at a radius of {radius}",
    "paper.pilot_limit": "Limit at the pilot bearing: offset {offset}, which is TIR {tir}",
    "paper.source": "Source of the limits: {source}",
    "paper.no_source": "Source of the limits: none entered",
    "paper.usual_limit": "Source of the limits: none entered; the bore's is common practice",
    "paper.length.inch": "{value} in",
    "paper.length.metric": "{value} mm",
    "paper.dial": (
        "Dial: step {step}, accuracy ±{accuracy}, scatter {scatter}; plus when the plunger {plus}"
    ),
    "paper.plunger_in": "is pushed in",
    "paper.plunger_out": "comes out",
    "paper.droop": "Droop of the bracket, measured: {sag}",
    "paper.droop_unknown": "Droop of the bracket: not measured, at most {most}",
    "paper.contact_angle": "Contact angle {angle}",
    "paper.plate": "Plate between block and housing: {thickness} thick",
    "paper.lift": "Crank lift {lift}",
    "paper.results": "What each round came to, in {unit}",
    "paper.round": "Round {n}",
    "paper.pm": "{value} ± {pm}",
    "paper.verdict.within": "within",
    "paper.verdict.outside": "outside",
    "paper.verdict.undecided": "too close to call",
    "paper.head.round": "Round",
    "paper.head.dowels": "Dowels in",
    "paper.head.offset": "Offset",
    "paper.head.tir": "TIR",
    "paper.head.toward": "Toward",
    "paper.head.chance": "Chance inside",
    "paper.head.bore": "Bore",
    "paper.head.face": "Face runout",
    "paper.head.pilot": "Off at pilot",
    "paper.head.sweep": "Swept",
    "paper.head.closing": "Back",
    "paper.readings_of": "{round}: what the dial showed, touching {contact}",
    "paper.inside": "inside",
    "paper.outside": "outside",
    "paper.row.bore": "Bore",
    "paper.row.part": "Sweep",
    "paper.row.face": "Face, radius {radius}, plunger {plunger}, {end}",
    "paper.row.opposite": "Face, second dial",
    "paper.forward": "forward",
    "paper.rearward": "rearward",
    "paper.free": "end float not dealt with",
    "paper.held": "crank held one way",
    "paper.second": "with a second dial",
    "paper.sweep": "{what}, {n}",
    # The link
    "link.none": "This page shows a job that comes with a link, and there is none in the address.",
    "link.cut": (
        "This link is cut or damaged: a part of it is missing or changed. Ask for it again, and open "
        "it whole."
    ),
    "link.foreign": "This is not a link that Sweepsheet made.",
    "link.newer": (
        "This link was made by a newer Sweepsheet. Load this page again while you have a signal, then "
        "open the link again."
    ),
    "link.longer": "This link is longer than any that Sweepsheet makes ({high} characters).",
    "link.too_long": (
        "This job is too long for a link: it would have {got} characters, and {high} can be sent "
        "without being cut. Print it, or send the file."
    ),
    "link.job": "The job in this link can't be read: {why}.",
    "link.figures": "The figures in this link are not in the form in which Sweepsheet writes them.",
    # Files
    "file.saved": "The job is saved.",
    "file.saved_all": "{n} jobs are saved.",
    "file.csv_saved": (
        "The readings are saved. A CSV carries nothing else: limits, dial, dimensions, dowels, names "
        "and notes are in the job's own file."
    ),
    "file.opened": "The job is opened as a new one.",
    "file.opened_all": "{n} jobs are opened as new ones.",
    "file.csv_opened": (
        "The readings are opened as a new job. A CSV carries nothing else: check limits, dial and "
        "contact, dimensions, dowels and the radius of the face."
    ),
    "file.one_wrong": "One thing is not right yet or still wanted.",
    "file.wrong": "{n} things are not right yet or still wanted.",
    "file.more": "and {n} more",
    "file.many": "One to {high} jobs go into a file, got {got}.",
    "file.large": "This file is larger than any of ours: {high} bytes are allowed.",
    "file.foreign": "This is neither a job file of Sweepsheet nor readings as CSV.",
    "file.jobs": "This file of jobs holds something that is no job.",
    "file.version": "This file has no version that ever was: {got}.",
    "file.newer": (
        "This file was made by a newer Sweepsheet (version {got}; this one reads {wanted}). Load this "
        "page again while you have a signal, then open the file again."
    ),
    "csv.header": "This CSV does not begin with our columns: {columns}.",
    "csv.broken": "This CSV is broken: {why}.",
    "csv.long": "This CSV is longer than any job: {high} lines are allowed.",
    "csv.empty": "There are no readings in this CSV.",
    "csv.units": "The readings of one job are all in thou or all in mm.",
    "csv.cells": "Line {line} of the CSV: {wanted} cells are wanted, got {got}.",
    "csv.part": "Line {line} of the CSV: what was swept is not a part we know.",
    "csv.unit": "Line {line} of the CSV: the unit is thou or mm.",
    "csv.count": "Line {line} of the CSV: {column}: a number from 1 to {high} is wanted.",
    "csv.twice": "Line {line} of the CSV: the same place stands twice in one sweep.",
    "csv.position": "Line {line} of the CSV: a reading without a position.",
    # The drawing
    "flange.title": "The front flange from behind, with a shim at each bolt",
    "flange.desc": "Shims: {shims}.",
    "flange.shim": "{at}: {shim}",
    "flange.view": "front flange, seen from behind; shims in {unit}",
    "flange.deepest": "machine off most here",
    "side.title": "Crank axis and gearbox axis, from the side and from above",
    "side.desc": "The gearbox axis is {bore} off at the bore and {pilot} off at the pilot bearing.",
    "side.from_side": "From the side (9 o'clock)",
    "side.from_above": "From above (3 o'clock up)",
    "side.exaggerated": "offsets drawn {times} times as large as lengths",
    "side.forward": "forward is left; the red line is the gearbox axis",
    "side.face": "rear face",
    "side.pilot": "pilot",
    "side.crank": "crank",
    "side.gearbox": "gearbox",
    # Led through a sweep
    "guide.way.clockwise": "clockwise",
    "guide.way.anticlockwise": "counterclockwise",
    "guide.way.one_way": "always the same way",
    "guide.unreadable": "No picture, since the positions can't be read. {why}",
    "guide.ready": "Get ready",
    "guide.ready_help": "Before the crank is turned:",
    "guide.zero": "Bring the dial to {at}; zero it. No need to hunt the low or high spot.",
    "guide.zero_both": "Stand the first dial at {at}, the second opposite, and set both to zero.",
    "guide.base": "Base on crank flange or flywheel, bolts tight, clutch cover off.",
    "guide.wipe": "Wipe the bore. Tip clear of chamfer and nicks.",
    "guide.rim": "Wipe the face. Touch near the rim, off the bolt holes.",
    "guide.sense": "Push the plunger in by hand: the dial must go to {sign}. If not, change it in the form.",
    "guide.travel": (
        "Plunger about half way in: turn once right round first, and it must never come to "
        "either end of its travel."
    ),
    "guide.stiff": "Nudge the bracket: the pointer must come back to the same line.",
    "guide.choose_push": "End play: choose one way, forward or rearward, to push the crank to its stop. Pry gently at flange or flywheel, never on a bearing or the dial.",
    "guide.afloat": "End play goes straight into the reading: push the crank to its stop, always the same way, let go, and say so in the form.",
    "guide.bar": "Plugs out. A bar on the crank bolt only in its tightening direction.",
    "guide.helper": "Tell your helper at the front: turn slowly, {front} as seen from there, and stop when told.",
    "guide.helper_one_way": "Tell your helper: turn slowly, {way}, and stop when told.",
    "guide.position": "{at}",
    "guide.turn": "Turn the crank {way} to {at}.",
    "guide.turn_front": "Turn the crank {way} to {at}. For the helper at the front: {front}.",
    "guide.turn_back": "Turn the crank {way}, on to {at}, where you began.",
    "guide.push": "Push the crank to its stop the chosen way, then let go.",
    "guide.settle": "Take the load off the bar. The needle has settled, not at the end of its travel.",
    "guide.upside_down": "Here the dial is upside down: check the sign. In a mirror it runs backward.",
    "guide.past": "Gone past? Go round again to it. Turn back only where the manufacturer allows it.",
    "guide.read": "Read the dial.",
    "guide.read_both": "Read both dials before anything moves.",
    "guide.back": "Back at the start",
    "guide.back_zero": "More than {most} off: something slipped. Sweep again.",
    "guide.start": "start",
    "guide.start_at": "The sweep begins at {at}.",
    "dowel_view.title": "The two dowels seen from their ends, with the mark of each high side",
    "dowel_view.both": "Both marks point to {aim}.",
    "dowel_view.turned": "Both marks turn from {now} to {aim}.",
    "dowel_view.each": "In order: {marks}.",
    "dowel_view.mark": "mark at {aim}",
    "dowel_view.stock": "stock: no mark",
    "dowel_view.hole": "hole at {hole}",
    "dowel_view.view": "seen from behind the engine",
    "dowel_view.step": "dashed: in the block; offset drawn larger",
    "dowel_view.now": "thin line: mark now, {now}",
    "wave.title": "The readings round the clock and the fitted wave",
    "wave.desc": "No reading is farther than {rest} from the wave.",
    "wave.reading": "reading, corrected",
    "wave.fitted": "fitted wave",
    "wave.foreign": "looks wrong",
    "wave.differ": "sweeps differ here",
    "wave.rest": "farthest from the wave: {rest}",
    "drawing.title": "The housing from behind, looking forward",
    "drawing.desc": ("The bore centre lies {offset} from the crank centre toward {direction}."),
    "drawing.view": "seen from behind, looking forward",
    "drawing.scale": "centre about {times} × life size",
    "drawing.crank": "crank",
    "drawing.bore": "bore",
    "drawing.limit": "limit {limit}",
    "drawing.move": "move",
    "drawing.after": "after dowels",
    "drawing.rearmost": "face most rearward",
    "drawing.region": "95% region",
}

ENGLISH = Language("en", TABLE)
