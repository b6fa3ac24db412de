"""English: every sentence of the core in one table, every sentence of the pages in another.

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
    "fault.whole": "{name}: a whole number is wanted",
    "fault.aim": "An aim is wanted, such as 10:30 or 315°",
    # Names of fields
    "name.job": "the job",
    "name.units": "units",
    "name.about.vehicle": "vehicle",
    "name.about.engine": "engine",
    "name.about.gearbox": "gearbox",
    "name.about.housing": "housing",
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

# The sentences of the pages, for their templates and scripts: the build fills them in. A key that begins
# with ``html.`` may hold markup, and only the templates use it. ``{unit}`` and ``{long_unit}`` in a sentence
# of a template become the unit that is chosen in the form. Beside these, the pages use some of ``TABLE``:
# ``answer.verdict``, ``bearing``, ``checklist``, ``clock.hour``, ``link`` and ``what``.
PAGE: dict[str, str] = {
    # Everywhere
    "unit.small.inch": "thou",
    "unit.small.metric": "mm",
    "unit.long.inch": "inch",
    "unit.long.metric": "mm",
    "language.name": "English",
    "page.no_script": "This page needs JavaScript, and does not find it.",
    "page.download": "Download of the calculation",
    "page.own_job": "Your own job",
    "page.practise": "Practise",
    "page.how": "How it is worked out",
    "page.people": "For people who know the work.",
    "page.licences": "Licences",
    "page.example_aim": "10:30 or 315°",
    # Why the page can't start (boot.js)
    "start.no_modules": "This browser is too old for this page: it cannot load scripts that are made of parts (modules). Bring it up to date, or open the page in another.",
    "start.too_old": "This browser is too old for this page: its JavaScript is older than 2022. Bring it up to date, or open the page in another.",
    "start.lost": "A part of this page did not come. Load the page again.",
    "start.failed": "This page could not be started in this browser ({why}). Bring it up to date, or open the page in another.",
    # The calculation (messenger.js, python-files.js)
    "python.no_worker": "This browser cannot run the calculation: it has no module workers.",
    "python.no_wasm": "This browser cannot run the calculation: WebAssembly is missing or switched off.",
    "python.old_wasm": "This browser cannot run the calculation: its WebAssembly is too old. Bring the browser up to date.",
    "python.not_started": "The calculation could not be started: {why}",
    "python.no_file": "one of its files did not come, or this browser is too old.",
    "python.stalled": "The calculation did not start: nothing has come for a while. Load the page again.",
    "python.lost": "The file {name} did not come ({status}).",
    # Use without a signal (offline.js, sw.js)
    "offline.not_yet": "Without a signal: not yet.",
    "offline.take": "Take it now",
    "offline.unsupported": "Cannot be kept for use without a signal: {why}.",
    "offline.installing": "Being kept for use without a signal …",
    "offline.ready": "Ready to work without a signal.",
    "offline.failed": "Could not be kept for use without a signal: {why}",
    "offline.update-waiting": "Ready to work without a signal. A newer release is ready: take it now, or it is taken the next time the page is opened.",
    "offline.update-failed": "Ready to work without a signal. A newer release could not be kept, and this one stays: {why}",
    "offline.update-taken": "Ready to work without a signal. A newer release was taken in another window; this one goes on with the older, until it is loaded again.",
    "offline.next_time": "Ready to work without a signal. A newer release has come; it is taken the next time the page is opened.",
    "offline.not_taken": "The newer release was not taken, since what is typed could not be kept ({why}). Save the job to a file first.",
    "offline.nothing_kept": "this browser does not store it",
    "offline.not_offered": "this browser does not offer it",
    "offline.needs_https": "it needs https",
    "offline.refused": "the browser refused it.",
    "offline.not_whole": "{path} did not come whole.",
    # The page for a job: head
    "index.description": "From dial readings to a bellhousing that is true to the crankshaft. Works without a signal.",
    "index.lead": "A bellhousing trued to the crank. Seen from behind the engine, looking forward.",
    "index.starting": "Getting ready to calculate. You can type already.",
    "index.ready": "Ready.",
    "index.footer": "For people who know the work. Check what it says against the maker's manual and your own eyes. Nothing that is typed leaves this phone, but in a link or a file that you hand on.",
    "cautions.name": "Cautions",
    "html.cautions.first": "<b>Engine and car on proper stands, battery off, plugs out, crank turned by hand, fingers clear.</b> The maker's limits and torques rule.",
    "cautions.before": "Before you sweep",
    "cautions.jack": "Never lie under a jack alone. Tell your helper before each turn of the crank. Turn it the way the engine runs; a bar on the crank bolt only in its tightening direction.",
    "cautions.joint": "Joint faces clean and flat, nothing proud, every part between block and housing that will be there in the end, bolts evenly tight.",
    "cautions.dial": "The dial stiff in its bracket, square to the bore, free, not near the end of its travel.",
    "cautions.face": "Sweep the rear face too, and put it right first: squaring the face moves the bore.",
    "cautions.maker": "The maker's procedure comes first, then local rules and qualified people. This page comes after all of them.",
    # Jobs and files
    "job.heading": "Job:",
    "job.unnamed": "Unnamed job",
    "job.name": "Name of this job",
    "job.new": "New job",
    "job.copy": "Copy this job",
    "job.delete": "Delete this job",
    "job.undo": "Bring the deleted job back",
    "job.others": "Other jobs on this phone",
    "job.copy_of": "{name}, copy",
    "job.kept": "Kept on this phone as you type.",
    "job.kept_for_now": "Kept on this phone as you type. The browser may clear it if the page is not used for long: put it on the home screen.",
    "job.not_kept": "NOT KEPT: this browser does not store what you type ({why}). Write the readings down.",
    "files.heading": "Files",
    "files.save": "Save this job to a file",
    "files.csv": "Save the readings as CSV",
    "files.save_all": "Save all jobs",
    "files.open": "Open a file (.json or .csv). It comes in as a new job.",
    "files.working": "A moment …",
    "files.saved": "{told} File: {name}",
    "files.too_large": "This file is larger than any of ours, and was not opened.",
    "files.failed": "That did not work: {why}",
    # The form: what the job is about
    "ticked.count": "{n} of {of}",
    "about.heading": "About this job",
    "about.vehicle": "Vehicle",
    "about.engine": "Engine",
    "about.gearbox": "Gearbox",
    "about.housing": "Housing",
    "about.technician": "Technician",
    "about.customer": "Customer",
    "about.date": "Date",
    "about.notes": "Notes",
    # The form: dial and positions
    "dial.heading": "Dial and positions",
    "units.label": "Units",
    "units.inch": "thou, inch",
    "units.metric": "mm",
    "contact.label": "The dial, carried by the crank, touches",
    "contact.inside": "the bore, from inside",
    "contact.outside": "a spigot, from outside",
    "field.indicator.plus_when": "It reads plus when the plunger",
    "field.indicator.plus_when.plunger_in": "is pushed in",
    "field.indicator.plus_when.plunger_out": "comes out",
    "shows.label": "Its numbers run",
    "shows.signed": "both ways from zero",
    "shows.all_round": "one way, all the way round",
    "turn_of_dial.label": "One whole turn of the pointer, {unit}",
    "turn_of_dial.help": (
        "Type what the dial shows. Past half a turn it counts as minus: of a turn of 100, 93.5 is "
        "−6.5. What has a sign is taken as typed."
    ),
    "field.indicator.holder": "The dial is held by",
    "field.indicator.holder.none": "not said (counts as up to 3 thou, 0.08 mm of sag)",
    "field.indicator.holder.bracket": "a short bracket, bolted up stiff (to 1 thou, 0.03 mm)",
    "field.indicator.holder.short_arm": "a magnetic base, one short arm (to 3 thou, 0.08 mm)",
    "field.indicator.holder.jointed_arm": "a magnetic base, jointed or flexible arm (to 5 thou, 0.13 mm)",
    "positions.label": "Positions",
    "positions.4": "4: every quarter",
    "positions.6": "6: every two hours",
    "positions.8": "8: every hour and a half",
    "positions.12": "12: every hour",
    "positions.own": "my own",
    "turn.help": "Turn it the way the engine runs: backward can undo the bolt the bar is on, or upset a belt or chain tensioner.",
    "turn.label": "Seen from behind, the crank is turned",
    "turn.clockwise": "clockwise, 12 to 3 (counterclockwise at the front): if yours runs so",
    "turn.anticlockwise": "counterclockwise, 12 to 9 (clockwise at the front): as most engines run",
    "positions.mine": "My positions, in the order swept",
    "positions.help": "Clock positions such as 3 or 10:30, or degrees clockwise from 12 such as 45°. A space between them.",
    # The form: readings
    "readings.heading": "Readings",
    "html.readings.help": "In <b>{unit}</b>, plus and minus as the dial shows them. Leave a position blank that can't be reached.",
    "readings.add_round": "Add a recheck",
    "readings.clear": "Clear the readings",
    "readings.example": "Load an example",
    "hand.title": "Keys for the reading",
    "hand.down": "One step of the dial down",
    "hand.up": "One step of the dial up",
    "hand.undo": "Undo",
    "hand.next": "Next",
    "readings.sweep": "Sweep {n} of the {what}",
    "readings.remove_sweep": "Remove sweep {n} of the {what}",
    "readings.remove": "Remove",
    "readings.reading": "{where}, {what}, sweep {n}",
    "readings.sign": "Plus or minus: {where}",
    "readings.closing": "Back at the start",
    "readings.closing_help": "How far off the dial is when the crank is back where the sweep began: 0 if it came back.",
    "readings.second_dial": "Second dial, opposite",
    # Led through a sweep
    "guide.lead": "Lead me through it",
    "guide.lead_sweep": "Lead me through it: sweep {n} of the {what}",
    "guide.lost": "What leads through a sweep could not be had: {why}. The form works without it.",
    "guide.get_ready": "Get ready",
    "guide.begin": "Begin",
    "guide.next": "Next",
    "guide.previous": "Back",
    "guide.leave": "Back to the form",
    "guide.skip": "Can't be reached: leave it blank",
    "guide.again": "Sweep once more",
    "guide.done": "Swept",
    "guide.count": "{n} of {of}",
    "guide.reading": "Reading",
    "guide.reading_opposite": "Second dial",
    "guide.voice": "Say it aloud",
    "guide.voice_own": "The voice is the browser's own.",
    "guide.dark": "The screen may go dark: this browser does not keep it awake.",
    "round.as_found": "As found",
    "round.recheck": "Recheck {n}",
    "round.name": "Name of this round",
    "round.name_first": "This round: its name; dowels that were in already; swept otherwise",
    "round.dowels": "Dowels now in, {unit} offset (0: standard)",
    "round.aim": "Aimed at, clock position",
    "round.other": "The other dowel",
    "round.alike": "is the same, aimed the same",
    "round.unlike": "differs",
    "round.other_offset": "The other dowel, {unit} offset",
    "round.other_aim": "The other dowel, aimed at",
    "round.more_bore": "Sweep the bore once more",
    "round.more_face": "Sweep the face once more",
    "round.remove": "Remove this recheck",
    "face.heading": "Face sweep",
    "face.radius": "Radius swept on the face, {long_unit}",
    "plunger.label": "The plunger points",
    "plunger.forward": "forward: it touches the face from behind",
    "plunger.rearward": "rearward: it touches from the front",
    "end_float.label": "End play of the crank",
    "end_float.free": "not controlled",
    "end_float.held": "crank pushed to its stop one way, let go",
    "end_float.second": "second dial, opposite the first",
    "end_float.second_held": "second dial, and crank pushed one way",
    "otherwise.bore": "The bore was swept otherwise this time",
    "otherwise.face": "The face was swept otherwise this time",
    "otherwise.heading_button": "This part was swept otherwise",
    "otherwise.heading": "This sweep was taken otherwise",
    "otherwise.help": "Blank: as said for all.",
    "otherwise.as_all": "as said for all",
    "otherwise.positions": "Its positions, in the order swept",
    "otherwise.contact": "Its dial touches",
    "otherwise.radius": "Its radius on the face, {long_unit}",
    "otherwise.plunger": "Its plunger points",
    # The form: limit and dowels
    "limit.heading": "Limit and dowels",
    "field.limits.bore_offset": "Limit for the bore, {unit}",
    "limit.given_as": "Is your manual's number offset or TIR?",
    "limit.offset": "offset",
    "limit.tir": "TIR",
    "limit.both": "TIR is twice the offset.",
    "field.limits.source": "Where the limit comes from",
    "field.limits.source.example": "manual, page",
    "field.limits.face_runout": "Limit for the face, runout (TIR), {unit}",
    "field.stock.dowel_offsets": "Offset dowels in the drawer, {unit} offset each",
    # The answer
    "result.heading": "What it comes to",
    "result.waiting": "Type the readings above; the answer follows by itself.",
    "result.one_wrong": "One thing above is not right yet.",
    "result.wrong": "{n} things above are not right yet.",
    "result.to_do": "What to do",
    "result.aim": "Aim: the clock position, seen from behind, toward which the offset peg stands off from its hole in the block. The housing goes the way the pegs point.",
    "result.choices": "What each choice would leave",
    "result.choice": "Choice",
    "result.left": "Offset left, {unit}",
    "result.chance": "Chance inside",
    "result.pilot": "At the pilot, {unit}",
    "result.doubts": "What is doubtful",
    "result.explain": "What are these figures?",
    # Show it to the customer
    "share.heading": "Show it to the customer",
    "share.help": "The whole job travels in the link itself; nothing is stored elsewhere. Whoever has the link can read all of it, names and notes too.",
    "share.send": "Send the link",
    "share.copy": "Copy the link",
    "share.qr": "Show a QR code",
    "share.print": "Print the sheet",
    "share.link": "The link",
    "share.qr_name": "QR code of the link",
    "share.qr_help": "Point a phone's camera at it.",
    "share.title": "What was measured on your bellhousing",
    "share.reach.network": "This page stands at a private address: the link opens on this network only.",
    "share.reach.machine": "This page stands at an address of this machine alone: the link opens here only.",
    "share.no_qr": "The link is too long for a QR code.",
    "share.copied": "The link is copied.",
    "share.marked": "This browser does not let the page copy. The link is marked: copy it by hand.",
    "share.failed": "That did not work: {why}",
    "print.none": "There is no answer yet, and so no sheet to print. Type the readings first.",
    "print.stale": "The sheet was still being made. Wait two seconds after the last change, and print again.",
    # The form: dimensions
    "housing.heading": "Dimensions of housing and gearbox",
    "housing.help": "Nothing is assumed: what is left blank is not worked out.",
    "field.housing.pilot_distance": "From the rear face forward to the pilot bearing, {long_unit}",
    "field.limits.pilot_offset": "Limit at the pilot bearing, offset, {unit}",
    "field.housing.pilot_bearing": "The pilot bearing is",
    "field.housing.pilot_bearing.none": "something else, or not known",
    "field.housing.depth": "Depth of the housing, front flange to rear face, {long_unit}",
    "field.housing.plate_thickness": "Plate between block and housing, thickness, {long_unit}",
    "field.housing.tilt_from": "Which side makes the face lean",
    "field.housing.tilt_from.none": "not known",
    "field.housing.tilt_from.front": "the block side: the housing is tipped",
    "field.housing.tilt_from.rear": "the rear face: it is cut crooked",
    "field.housing.tail_distance": "From the rear face back to the gearbox tail, {long_unit}",
    "field.limits.face_radius": "The face limit is for a radius of, {long_unit}",
    "field.limits.face_radius.help": "Blank: for the radius swept. 1: for each inch or millimetre of radius.",
    "housing.bolts_at": "Bolts of the front flange, clock positions",
    "housing.bolts_radius": "Bolts, distance from the crank axis, {long_unit}",
    "housing.bolts_radius_help": "One for all, or one for each in the same order.",
    "field.housing.bolt_clearance": "Bolts, clearance in their holes, on the diameter, {unit}",
    "field.stock.shim_thicknesses": "Shims in stock, {unit}",
    "field.stock.shim_thicknesses.example": "1 2 5 10",
    "housing.holes_at": "Dowel holes, clock positions",
    "housing.holes_radius": "Dowel holes, distance from the crank axis, {long_unit}",
    "field.housing.dowel_clearance": "Dowels, clearance in the housing, on the diameter, {unit}",
    "field.stock.aim_for": "The dowels are to bring to the crank axis",
    "field.stock.aim_for.bore": "the bore",
    "field.stock.aim_for.pilot": "the gearbox axis at the pilot bearing",
    "field.housing.bore_diameter": "Diameter of the bore, {long_unit}",
    "field.housing.register_diameter": "Diameter of the gearbox's register in it, {long_unit}",
    "in_joint.heading": "What a chip in the joint would do",
    "in_joint.label": "The chip is",
    "in_joint.front": "under the front flange",
    "in_joint.rear": "on the rear face",
    "in_joint.height": "Height, {unit}",
    "in_joint.at": "At, clock position",
    "in_joint.radius": "Distance from the crank axis, {long_unit}",
    "turning.heading": "Parts that turn with the crank",
    "turning.help": "The dial stands on the block, and the part turns under it. A position is the mark on the part that is under the dial.",
    "turning.pilot_bore": "Pilot bore",
    "turning.crank_flange": "Crank flange, outside",
    "turning.flywheel_face": "Flywheel face",
    "turning.limit": "Limit, TIR, {unit}",
    # The form: more about dial, crank and dowels
    "more.heading": "More about dial, crank and dowels",
    "more.sag": "Sag test: read at the bottom, {unit}",
    "more.sag_help": "Same reach and clamps as in the sweep, on a stiff bar held level. Zero with the dial on top. Roll bar and all over, dial underneath: read, without its sign. Roll back: it must return to zero. Do it three times and type all three, a space between. Blank if not measured.",
    "field.indicator.sag_allowance.help": "Blank: what such a holder usually sags. Common practice, no source.",
    "field.indicator.sag_allowance": "If not measured: the most it may be, {unit}",
    "field.crank.axis": "The crank lies",
    "field.crank.axis.horizontal": "level, as in the car",
    "field.crank.axis.vertical": "on end, on a stand",
    "field.crank.lift": "Crank lift in its bearings, measured, {unit}",
    "field.indicator.contact_angle_deg": "Contact angle, degrees",
    "field.indicator.contact_angle_deg.help": "Between the plunger and the radial line, or the lever and the tangent.",
    "field.indicator.step": "Smallest step read off the dial, {unit}",
    "field.indicator.accuracy": "Accuracy of the dial, plus or minus, {unit}",
    "field.indicator.repeatability": "Scatter of one reading, {unit}",
    "field.indicator.repeatability.help": "As a standard deviation. Two sweeps or more tell it better.",
    "field.indicator.angle_setting_deg": "The crank stands at its mark within plus or minus, degrees",
    "field.limits.confidence": "Counts as inside from a probability of",
    "field.stock.aim_setting_deg": "A dowel can be aimed within plus or minus, degrees",
    # The practice housing
    "exercise.description": "A housing to practise on: sweep it, fit dowels, and see the truth beside what you found.",
    "exercise.heading": "Practice housing",
    "exercise.lead": "Invented, with an error hidden in it. Sweep it, put it right, and see the truth. Seen from behind the engine, looking forward.",
    "exercise.starting": "Getting the housing ready.",
    "exercise.title": "Exercise",
    "exercise.number": "Number",
    "exercise.level": "Level",
    "exercise.level.1": "1 easy",
    "exercise.level.2": "2 usual",
    "exercise.level.3": "3 whole",
    "exercise.new": "New exercise",
    "exercise.address": "The address of this page names the exercise: hand it on, and everybody gets the same housing.",
    "exercise.set_up": "Set-up: make the dial behave as yours does",
    "exercise.set_up_help": "But for the positions, a change here begins the exercise anew.",
    "exercise.plunger": "On the face, the plunger points",
    "exercise.turn": "Turn the crank:",
    "exercise.part": "The dial is",
    "exercise.part.bore": "on the bore",
    "exercise.part.face": "on the face",
    "exercise.crank": "Crank",
    "exercise.back": "Back to the mark before",
    "exercise.on": "On to the next mark",
    "exercise.to_mark": "Turn to a mark",
    "exercise.help": "Drag round the housing, or use slider or keys. The dial was zeroed at 12. Turn the whole way round: it must come back to where it began.",
    "html.exercise.readings": 'In <b>{unit}</b>. Read the dial and type, or press "Note".',
    "exercise.once_more": "Sweep once more",
    "exercise.droop": "Roll it over on a stiff bar",
    "exercise.old_answer": "This is still the answer from before the dowels. Sweep the bore again.",
    "exercise.waiting": "Note the readings above; the answer follows by itself.",
    "exercise.fit": "Fit dowels",
    "exercise.fit_help": "Both alike. Aim: the clock position, seen from behind, toward which the pegs stand off. To trim, fit the same ones with another aim.",
    "exercise.offset": "Offset, {unit}",
    "exercise.aim": "Aimed at",
    "exercise.fit_now": "Fit them",
    "exercise.truth": "The truth",
    "exercise.show_truth": "Show the truth",
    "exercise.footer": "For practice only: a real housing can be wrong in more ways than this one. Nothing here is kept or sent.",
    # The customer's view. It is read by a person who pays, not by one who knows the trade.
    "view.title": "What was measured",
    "view.heading": "A bellhousing, measured",
    "view.lead": "The housing between engine and gearbox, and how true it stands to the crankshaft. Seen from behind the engine, looking forward.",
    "view.no_script": "This page needs JavaScript to read the link, and does not find it.",
    "view.waits": "This browser can't unpack the link by itself. It is read as soon as the calculation is there …",
    "view.checking": "Not checked yet. This phone is now working everything out again from the readings; that takes a moment.",
    "view.agrees": "This phone worked it all out again from the readings: the figures agree.",
    "view.older": "An older release made this link, and it worked out doubt in another way. Below are the figures it shows and those worked out now. Ask the shop for a new link.",
    "view.disagrees": "The figures and the readings do not agree.",
    "view.disagrees_more": "Worked out again from the readings in this link, other figures come out than the ones it shows. The link was changed, or made by another release. Do not rely on it: ask the one who sent it. Below stand both.",
    "view.claimed": "What the link shows",
    "view.recomputed": "What the readings give",
    "view.unchecked": "The figures below were not checked against the readings. {why}",
    "view.about.vehicle": "Vehicle",
    "view.about.engine": "Engine",
    "view.about.gearbox": "Gearbox",
    "view.about.housing": "Housing",
    "view.about.technician": "Made by",
    "view.about.customer": "For",
    "view.about.date": "Date",
    "view.about.notes": "Notes",
    "view.found": "What was found",
    "view.done": "What was done",
    "view.ended": "Where it ended",
    "view.allowed": "What is allowed",
    "view.drawn": "Drawn",
    "view.before": "As it was found",
    "view.after": "As it was left",
    "view.doubts": "What the record says of itself",
    "view.readings": "Every reading",
    "view.bore": "The bore stood {offset} {unit} off the crank's axis (± {pm}), toward {toward}. On the dial that is TIR {tir} {unit}.",
    "view.bore_nowhere": "The bore stood {offset} {unit} off the crank's axis (± {pm}). On the dial that is TIR {tir} {unit}.",
    "view.chance": "Chance that it is inside the limit: {chance}.",
    "view.face": "Rear face: out of square by {face_runout} {unit} (± {face_pm}).",
    "view.face_limit": "Rear face: out of square by {face_runout} {unit} (± {face_pm}), limit {face_limit}.",
    "view.pilot": "At the pilot bearing the gearbox's axis was {pilot_offset} {unit} off (± {pilot_pm}).",
    "view.judged": "{line} {verdict}.",
    "view.nothing_done": "No recheck on record.",
    "view.standard": "Stock dowels are in. The record does not say what else was done.",
    "view.dowels": "Both dowels with {offset} {unit} offset, aimed at {aim}.",
    "view.dowels_differ": "One dowel {one}; the other {other}.",
    "view.dowel": "{offset} {unit} offset, aimed at {aim}",
    "view.dowel_standard": "standard",
    "view.round": "Measured again, {n}",
    "view.limit": "The bore may be {limit_offset} {unit} off at most, which is TIR {limit_tir} {unit}.",
    "view.no_limit": "No limit was given for the bore.",
    "view.pilot_limit": "At the pilot bearing it may be {limit_pilot} {unit} at most.",
    "view.source": "These limits come from:",
    "view.no_source": "No source entered for these limits. The manufacturer's figure comes first.",
    "view.stops": "Not finished: the record itself says STOP, something is still open. Ask the shop.",
    "view.adopt": "Open as a job of my own",
    "view.opening": "Opening …",
    "view.not_opened": "It could not be kept on this phone: {why}",
    "view.print": "Print",
    "view.meanings": "What the words mean",
    "view.term.housing": "Bellhousing, bore, face",
    "html.view.means.housing": "The bellhousing joins the gearbox to the engine. The gearbox sits in the round <i>bore</i> in its rear and against the flat <i>face</i> around it.",
    "view.term.offset": "Offset",
    "view.means.offset": "How far the middle of the bore stands off the line on which the crankshaft turns. A thou is a thousandth of an inch, 0.0254 mm.",
    "view.term.tir": "TIR",
    "view.means.tir": "Total indicator reading: by how much a dial without sag would move in one full turn. It is twice the offset.",
    "view.means.pm": "What the readings are worth: 95 times in 100 the true figure lies no farther away than this.",
    "view.term.undecided": "Too close to call",
    "view.means.undecided": "The figure is so near the limit that these readings can't tell on which side it is.",
    "view.term.dowels": "Offset dowels",
    "view.means.dowels": "The pins that place the housing on the engine, made with a step in them, so that they hold it a little to one side.",
    "view.term.pilot": "Pilot bearing",
    "view.means.pilot": "The bearing in the end of the crankshaft that carries the tip of the gearbox's shaft.",
    "view.cautions": "Before you rely on it",
    "view.caution.record": "This is a record of what a dial showed, and no promise of how long parts will last. Other things wear gearboxes, too.",
    "view.caution.limits": "The limits of the car's or gearbox's maker count before any other. Ask where the limit named here comes from.",
    "view.caution.stop": "If it shifts badly, drags or makes noises after the work, stop driving and have it looked at by qualified people.",
    "view.caution.yours": "This page can show that figures and readings belong together. It can't show that the readings were taken on your car.",
    "view.footer": "All that stands here came in the link itself. Opening it stored nothing on this phone and sent nothing anywhere.",
    # How it is worked out
    "how.description": "How Sweepsheet works out what it says: frame and signs, formulas, doubt, decision, limits and sources.",
    "how.lead": 'From readings to dowels, step by step. What stands under "In the program\'s own words" is printed from the program that does the sums.',
    "how.contents": "Contents",
    "how.own_words": "In the program's own words:",
    "how.frame": "Where one looks from",
    "how.frame.text": "Stand behind the engine and look forward at the housing. The top of the engine is 12 o'clock, right is 3. Every direction on every page is told so. Mixing up front and rear view turns left into right, and then dowels make it worse.",
    "how.frame.plus": "A reading is plus when the plunger is pushed in. A dial that reads the other way is turned round once, before anything else is done with it.",
    "how.positions": "Which readings will do",
    "how.positions.text": "Three places round the bore fix a circle, if they are not all on one side of it. Four show a mistake. Eight show which reading it is.",
    "how.corrections": "Before the fit: what the dial adds of its own",
    "how.corrections.text": "A bracket hangs down a little. Pointing up it hangs away from the wall, pointing down into it, so a perfect bore reads as one that is too high, never too low. Measured, it is taken out. Not measured, half of what such a holder may hang is taken out, and the rest is doubt. A slanting plunger shows too much. A dial that does not come back to zero has slipped or stuck somewhere on the way.",
    "how.fit": "The wave in the readings",
    "how.fit.text": "Turn a dial round in a bore that is off to one side: it rises and falls once a turn. How high the wave is tells how far the bore is off, and where it is highest tells which way. All readings together are used, by least squares, so that a small error of one is mended by the others. From top to bottom the wave is twice the offset: that is the TIR.",
    "how.checks": "Do the readings hang together?",
    "how.checks.text": "In a round bore, opposite readings added up come to the same. What the one wave leaves over shows a wrong reading, a burr, a bore that is not round, or something that moves.",
    "how.doubt": "What the readings are worth",
    "how.doubt.text": "No dial is perfect, no crank stands just on its mark, and nobody reads between the lines twice alike. Each of these has a size, and together they say how far the answer may be off: the plus or minus. A second sweep makes scatter smaller. It does not make the dial itself any better.",
    "how.decision": "Within, outside, or too close to call",
    "how.decision.text": 'Five thou against a limit of five, plus or minus one, is not "just inside". It is a coin that has not come down. So the page says what the chance is, and calls it within only from 95 in 100.',
    "how.bore": "The bore",
    "how.bore.text": "Inside a bore the dial is pushed in most where the wall is nearest, so the housing must move toward the highest reading, by half the TIR.",
    "how.face": "The rear face",
    "how.face.text": "The gearbox stands on this face. If it leans, the gearbox leans. It comes before the bore, because squaring it swings the bore.",
    "how.pilot": "At the pilot bearing",
    "how.pilot.text": "The input shaft comes out of the gearbox, through the bore, into the pilot bearing. Where its line meets that bearing is what the shaft feels: the offset of the bore, and the lean of the face times the distance.",
    "how.dowels": "Dowels",
    "how.dowels.text": "An offset dowel stands off to one side in its hole. Two alike, aimed alike, carry the housing that way by their offset. The size is chosen that leaves the best chance, and never to mend what is within already. Where none in the drawer is expected to bring it within, the size that is needed is named.",
    "how.trim": "After the recheck",
    "how.trim.text": "Dowels seldom do just what is written on them. Once they were seen at work, what they did counts, as far as the readings can tell it from noise.",
    "how.advice": "What to do, and in which order",
    "how.advice.text": "Nothing is done by a reading that can't be right. The face comes before the bore. No metal is cut and no shim laid for a tilt that was seen once, or with end play in it: first the joint is cleaned and swept again, and the side that is out is found. A bore that is within is tightened for good and swept once more: two sweeps in a row end the job.",
    "how.companions": "What turns with the crank",
    "how.companions.text": "A pilot bore or flywheel that runs out turns with the crank. No dowel cures that: the error is on the other side of the joint.",
    "how.practice": "The practice housing",
    "how.practice.text": "The housing on the practice page is made the other way about: bodies in space, and the distance from the dial to them. None of the formulas above is used to make it, so that it can show whether they are right.",
    "how.limits": "What it cannot see",
    "how.limits.face": "A face that is out of square, if only the bore was swept.",
    "how.limits.flange": (
        "A bracket that is loose or gives: the whole sweep is then wrong alike. A bent crank "
        "flange does no harm: the dial turns about the main bearings."
    ),
    "how.limits.dial": "A dial that sticks in the same place at every turn.",
    "how.limits.housing": "A housing that bends when the gearbox is bolted on, or warms up.",
    "how.limits.gearbox": "How the gearbox itself was made: its shaft is taken to run true to its register and its front face.",
    "how.limits.view": "A mistake in which way one looks. The picture says where 3 and 9 are: look at the housing and compare.",
    "how.limits.text": "The maker's limits, torques and procedure come first, then local rules and qualified people. The recheck on the dial decides, not a figure on a screen.",
    "how.sources": "Sources",
    "how.sources.gum": "Guide to the expression of uncertainty in measurement (GUM).",
    "how.sources.gum2": "the same for several quantities together.",
    "how.sources.decision": "the role of measurement uncertainty in deciding on conformity.",
    "how.sources.rules": "decision rules for proving conformity with a limit.",
    "how.sources.roundness": "measuring roundness; the least-squares centre.",
    "how.sources.worksheet": "US Army technical manual, a worksheet for sweeping a housing.",
    "how.sources.opposite": "Shaft Alignment Handbook; the rule of opposite readings.",
    "how.sources.means": "taking means out before a fit changes nothing.",
    "how.sources.none": "Where no source is named, it is geometry, or common practice and marked so.",
    # The page's own description, for the home screen
    "manifest.description": "From dial-indicator sweeps to a bellhousing that runs true to the crankshaft.",
}

ENGLISH = Language("en", TABLE)
