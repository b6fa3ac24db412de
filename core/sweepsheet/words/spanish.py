"""Spanish: the same sentences under the same keys as in ``english``.

For mechanics in Spain and Latin America: impersonal or "usted", one word for one thing (the
glossary stands in core/translating.md). Clock positions come with their article, ``las 10:30`` or
``la 1``, and parts with theirs, ``el alojamiento``: what stands before them is a preposition that
does not melt into an article (``en``, ``hacia``, ``para``), or ``a`` and ``de`` before a clock position.
"""

from __future__ import annotations

from sweepsheet.words.messages import Language

TABLE: dict[str, str] = {
    # Pieces
    "number.decimal_mark": ",",
    "unit.thou": "milésimas",
    "unit.thou_one": "milésima",
    "unit.mm": "mm",
    "unit.mm_one": "mm",
    "unit.slope.inch": "milésimas por pulgada",
    "unit.slope.metric": "mm por metro",
    "clock.hour": "las {hour}",
    "clock.hour_one": "la {hour}",
    "clock.time": "las {time}",
    "clock.time_one": "la {time}",
    "clock.low": "las {hour}",
    "clock.low_one": "la {hour}",
    "clock.between": "{time} (entre {low} y {high})",
    "chance.over": "más del 99%",
    "chance.under": "menos del 1%",
    "list": "{first} y {last}",
    "side.0": "hacia arriba",
    "side.1": "hacia arriba y a la derecha",
    "side.2": "a la derecha",
    "side.3": "hacia abajo y a la derecha",
    "side.4": "hacia abajo",
    "side.5": "hacia abajo y a la izquierda",
    "side.6": "a la izquierda",
    "side.7": "hacia arriba y a la izquierda",
    "sign.plus": "más",
    "sign.minus": "menos",
    "sense.high": "de más",
    "sense.low": "de menos",
    "sweep.only": "el barrido en {what}",
    "sweep.numbered": "el barrido {n} en {what}",
    "what.bore": "el alojamiento",
    "what.face": "la cara trasera",
    "what.pilot_bore": "el asiento del rodamiento piloto",
    "what.crank_flange": "la brida del cigüeñal",
    "what.flywheel_face": "la cara del volante",
    "field.housing.pilot_bearing.bronze_bushing": "un casquillo de bronce",
    "field.housing.pilot_bearing.needle": "un rodamiento de agujas",
    "field.housing.pilot_bearing.ball": "un rodamiento de bolas",
    "field.housing.pilot_bearing.cylindrical_roller": "un rodamiento de rodillos cilíndricos",
    "field.housing.pilot_bearing.tapered_roller": "un rodamiento de rodillos cónicos",
    # What was found in a field
    "got.nothing": "nada",
    "got.value": "{value}",
    "got.text": "«{value}»",
    "got.huge": "un número muchísimo mayor",
    "got.list": "una lista",
    "got.object": "un grupo de campos",
    "got.other": "otra cosa",
    # What is wanted in a field
    "fault.json": "Esto no es un archivo de trabajo: {why}.",
    "fault.too_big": "Esto es mayor que cualquier trabajo: {got} caracteres; se admiten {high}.",
    "fault.too_deep": "Esto tiene más niveles que cualquier trabajo.",
    "fault.format": "Esto no es un archivo de trabajo nuestro: se pide el formato «{wanted}»; hay: {got}",
    "fault.version": "se pide la versión {wanted} del archivo de trabajo; hay: {got}",
    "fault.version_newer": (
        "este trabajo lo escribió una versión más nueva (versión {got}); esta lee la versión "
        "{wanted}. Actualice y vuelva a abrirlo"
    ),
    "fault.object": "{name}: se pide un grupo de campos; hay: {got}",
    "fault.unknown": "{name} no es un campo de un trabajo",
    "fault.list": "{name}: se pide una lista; hay: {got}",
    "fault.count": "{name}: se piden de {low} a {high}; hay: {got}",
    "fault.number": "{name}: se pide un número; hay: {got}",
    "fault.range": "{name}: se pide un valor de {low} a {high}; hay: {got}",
    "fault.choice": "{name}: se pide una de estas opciones: {choices}; hay: {got}",
    "fault.text": "{name}: se pide un texto; hay: {got}",
    "fault.text_long": "{name}: se admiten {high} caracteres como máximo; hay: {got}",
    "fault.text_control": "{name}: contiene caracteres que no se pueden mostrar",
    "fault.readings": "{name}: lecturas pedidas, una por posición: {wanted}; hay: {got}",
    "fault.part_twice": "{kind} aparece dos veces: ponga juntos todos sus barridos",
    "fault.same_hole": "{name}: se piden dos lugares distintos",
    "fault.same_position": "La posición de {at} aparece dos veces: cada posición se pide una vez",
    "fault.few_readings": "barrido {n}: se piden al menos tres lecturas; hay: {got}",
    "fault.half_turn": (
        "barrido {n}: todas sus lecturas caen en media vuelta. Faltan lecturas del otro lado"
    ),
    "fault.position": (
        "{name}: se pide una posición de reloj como 3 o 10:30, o grados como 45°; hay: {got}"
    ),
    "fault.turn": "una vuelta entera de la aguja: se pide un número mayor que 0; hay: {got}",
    "fault.all_round": (
        "{name}: el reloj marca desde 0 hasta menos de {turn}. Se pide una lectura que esté en él, "
        "pero no {half}, que puede quedar a un lado u otro del cero; o una con su signo; hay: {got}"
    ),
    "fault.whole": "{name}: se pide un número entero",
    "fault.aim": "Se pide una orientación, como 10:30 o 315°",
    # Names of fields
    "name.job": "el trabajo",
    "name.units": "unidades",
    "name.about.vehicle": "vehículo",
    "name.about.engine": "motor",
    "name.about.gearbox": "caja de cambios",
    "name.about.housing": "campana",
    "name.about.technician": "técnico",
    "name.about.customer": "cliente",
    "name.about.date": "fecha",
    "name.about.notes": "notas",
    "name.limits.bore_offset": "límite del alojamiento",
    "name.limits.face_runout": "límite de la cara",
    "name.limits.face_radius": "radio del límite de la cara",
    "name.limits.pilot_offset": "límite en el rodamiento piloto",
    "name.limits.confidence": "confianza",
    "name.limits.source": "origen de los límites",
    "name.indicator.step": "división mínima del reloj",
    "name.indicator.accuracy": "exactitud del reloj",
    "name.indicator.repeatability": "repetibilidad",
    "name.indicator.plus_when": "cuándo marca más el reloj",
    "name.indicator.contact_angle_deg": "ángulo de contacto",
    "name.indicator.holder": "lo que sujeta el reloj",
    "name.indicator.sag": "prueba de caída",
    "name.indicator.sag_allowance": "caída máxima",
    "name.indicator.angle_setting_deg": "colocación del cigüeñal",
    "name.crank.axis": "eje del cigüeñal",
    "name.crank.lift": "levantamiento del cigüeñal",
    "name.housing.depth": "profundidad de la campana",
    "name.housing.plate_thickness": "grosor de la chapa del bloque",
    "name.housing.pilot_distance": "distancia al rodamiento piloto",
    "name.housing.tail_distance": "distancia a la cola de la caja",
    "name.housing.pilot_bearing": "rodamiento piloto",
    "name.housing.tilt_from": "qué lado está fuera de escuadra",
    "name.housing.bore_diameter": "diámetro del alojamiento",
    "name.housing.register_diameter": "diámetro del centrador de la caja",
    "name.housing.dowel_holes": "agujeros de los pasadores",
    "name.housing.bolts": "tornillos",
    "name.housing.bolt_clearance": "holgura de los tornillos",
    "name.housing.dowel_clearance": "holgura de los pasadores",
    "name.hole.at_deg": "agujero {n}, ángulo de reloj",
    "name.hole.radius": "agujero {n}, distancia al eje del cigüeñal",
    "name.stock.dowel_offsets": "pasadores disponibles",
    "name.stock.aim_setting_deg": "precisión de la orientación",
    "name.stock.aim_for": "para qué se orientan los pasadores",
    "name.stock.shim_thicknesses": "lainas disponibles",
    "name.dowel offset": "medida de pasador {n} disponible",
    "name.shim": "laina {n} disponible",
    "name.chip.joint": "junta de la viruta",
    "name.chip.height": "altura de la viruta",
    "name.chip.at_deg": "ángulo de reloj de la viruta",
    "name.chip.radius": "radio de la viruta",
    "name.job name": "nombre del trabajo",
    "name.checklist": "lista de comprobación",
    "name.companions": "barridos de otras piezas",
    "name.companion.kind": "pieza barrida",
    "name.companion.limit": "límite de la pieza, TIR",
    "name.rounds": "rondas",
    "name.round.name": "nombre de la ronda",
    "name.dowels": "pasadores montados",
    "name.fitted.offset": "pasador montado {n}, descentrado",
    "name.fitted.aim": "pasador montado {n}, orientación",
    "name.contact": "dónde toca el reloj",
    "name.face.radius": "radio del barrido de la cara",
    "name.face.plunger": "hacia dónde apunta el vástago",
    "name.face.end_float": "juego axial del cigüeñal",
    "name.face.opposite": "segundo reloj",
    "name.exercise.seed": "número del ejercicio",
    "name.exercise.level": "nivel del ejercicio",
    "name.exercise.positions": "número de posiciones",
    "name.exercise.part": "qué toca el reloj",
    "name.exercise.rounds": "número de rondas",
    "name.bore.contact": "dónde toca el reloj",
    "name.turn": "en qué sentido se gira el cigüeñal",
    "name.positions": "posiciones",
    "name.position": "posición {n}",
    "name.sweeps": "barridos",
    "name.sweep": "barrido {n}",
    "name.reading": "lectura de {at}",
    "name.reading of sweep": "lectura de {at} del barrido {n}",
    "name.closing": "vuelta a cero",
    "name.closing of sweep": "vuelta a cero del barrido {n}",
    # The checklist
    "checklist.preparation": "Preparación",
    "checklist.faces_clean": "Caras de unión del bloque y de la campana limpias y planas.",
    "checklist.nothing_proud": (
        "Nada sobresale: ni rebabas, ni pintura, ni restos de un pasador viejo."
    ),
    "checklist.parts_in_place": (
        "Está puesta toda pieza que al final irá entre el bloque y la campana."
    ),
    "checklist.bolts_even": "Tornillos de la campana apretados por igual.",
    "checklist.indicator_stiff": (
        "Reloj firme en su soporte, perpendicular a lo que toca, libre, sin llegar al final de su "
        "recorrido."
    ),
    "checklist.end_float": "Juego axial controlado: en cada parada, cigüeñal empujado hasta el tope hacia el mismo lado y suelto; o dos relojes.",
    "checklist.car_safe": (
        "Vehículo sobre caballetes adecuados, batería desconectada, ayudante avisado antes de cada "
        "giro del cigüeñal."
    ),
    "checklist.closing_up": "Antes de cerrar",
    "checklist.dowels_secured": "Pasadores asegurados: no pueden girar ni salirse.",
    "checklist.bolts_torqued": "Tornillos apretados al par del fabricante.",
    "checklist.swept_again": "Barrido repetido tras el apriete final.",
    "checklist.pilot_and_clutch": "Rodamiento piloto y embrague revisados.",
    "checklist.slid_home": (
        "Caja metida a mano hasta el fondo, nunca arrastrada con sus tornillos."
    ),
    "checklist.crank_turns": "El cigüeñal gira libremente.",
    "checklist.record_given": "Registro entregado.",
    # Findings
    "finding.closing-error": (
        "Tras la vuelta completa, {sweep} cerró con el reloj a {error} de su valor inicial; se "
        "admiten hasta {most}. No se fíe de este barrido: busque qué resbaló o se atascó, y repita "
        "el barrido."
    ),
    "finding.closing-spread": (
        "Tras la vuelta completa, {sweep} cerró con el reloj a {error} de su valor inicial. El "
        "error se repartió por igual entre las lecturas."
    ),
    "finding.closing-missing": (
        "Nadie anotó qué marcaba el reloj cuando {sweep} dio la vuelta completa. Siga girando hasta "
        "donde empezó: debe volver al mismo valor."
    ),
    "finding.foreign-reading": (
        "La lectura en {what} a {at} no encaja: marca {excess} {sense} frente a lo que dicen las "
        "otras. Repítala antes de actuar."
    ),
    "finding.earlier-unreliable": (
        "Ronda {n}: su barrido en {what} no es de fiar, y no cuenta para lo que se dice aquí."
    ),
    "finding.sweeps-disagree": (
        "Los barridos en {what} difieren hasta {excess} a {at}, más de lo que explica el reloj. "
        "Algo se mueve: revise el soporte, el juego axial y el contacto."
    ),
    "finding.out-of-round": (
        "El alojamiento está ovalado: {tir} TIR además del descentrado, con el reloj más alto cerca "
        "de {at} y de {opposite}. Busque ahí una rebaba, suciedad o un golpe."
    ),
    "finding.pair-sums": (
        "La suma de {first} y {second} y la suma de {third} y {fourth} difieren en {difference}; en "
        "un alojamiento redondo coinciden. Una lectura está mal o el alojamiento está ovalado: "
        "cuatro posiciones no bastan para saberlo. Repita el barrido con ocho."
    ),
    "finding.not-reached": (
        "Sin lectura en {what} a {at}: se calcula con las demás ({left} lecturas)."
    ),
    "finding.no-check": (
        "Tres lecturas en {what} siempre cuadran: nada descubre un error en una de ellas. Añada una "
        "cuarta si puede llegar."
    ),
    "finding.looks-like-inches": (
        "La mayor lectura en {what} es {largest}: parecen pulgadas. Las lecturas se piden en "
        "milésimas: 0,004 pulgadas son 4."
    ),
    "finding.no-limit": "No se puso límite para el alojamiento. Ponga el del fabricante.",
    "finding.undecided": "Demasiado justo para decidir: {offset} ± {pm} frente a {limit}. {settle}",
    "finding.too-coarse": "Con lecturas tan gruesas, ni un alojamiento perfecto podría demostrar que cumple {limit}.",
    "finding.limit-source": (
        "El límite es de práctica común ({limit} de descentrado). Antes va el valor de su manual."
    ),
    "finding.direction-unknown": (
        "El descentrado no es mayor que la incertidumbre de las lecturas, así que su dirección no "
        "significa nada."
    ),
    "finding.droop-unmeasured": (
        "No se midió la caída del soporte. Hace que el alojamiento parezca alto, nunca bajo: hasta "
        "{most} de arriba abajo. La mitad se descuenta, el resto es duda. Lo dice la prueba de caída."
    ),
    "finding.dowels-differ": (
        "Los dos pasadores montados ahora difieren en descentrado o en orientación. Qué haría un "
        "cambio de pasadores no se calcula para una pareja así."
    ),
    "finding.no-stock": (
        "No hay pasadores excéntricos en el cajón. Hace falta una pareja de aproximadamente {wanted} "
        "de descentrado."
    ),
    "finding.beyond-stock": (
        "Más de lo que arreglan los pasadores: hasta los mayores del cajón ({largest}) dejarían "
        "{expected}. Busque primero la causa: suciedad o rebaba en la junta, una campana "
        "equivocada o doblada, un reloj mal leído."
    ),
    "finding.stock-doubtful": (
        "La mejor pareja que entra no lo mete dentro con seguridad: debería dejar {expected}."
    ),
    "finding.between-sizes": (
        "Ninguna medida del cajón sirve: la mejor deja {expected}. Serviría una pareja de "
        "aproximadamente {size} de descentrado."
    ),
    "finding.unlike-reach": (
        "Ninguna pareja igual del cajón sirve. Dos pasadores desiguales deberían dejar {expected}: "
        "vea su tabla. También serviría una pareja de aproximadamente {size} de descentrado."
    ),
    "finding.face-not-swept": (
        "Haga también el barrido de la cara trasera y corríjala primero: al escuadrar la cara se "
        "puede mover el alojamiento."
    ),
    "finding.face-not-trusted": (
        "Repita el barrido de la cara: empuje el cigüeñal hasta el tope siempre hacia el mismo "
        "lado, suelte, lea. El juego axial se lee como inclinación. No se fíe de esta cara: no "
        "se juzga."
    ),
    "finding.no-face-limit": "No se puso límite para la cara. Ponga el del fabricante.",
    "finding.face-changed": (
        "La cara se inclina de otro modo que en la ronda {n}, en {change}: algo se movió en la "
        "junta. Afloje, limpie, apriete y repita el barrido."
    ),
    "finding.face-first": (
        "Primero la cara: su salto es {runout} ± {pm} frente a {limit}. Busque una rebaba o "
        "suciedad en la junta y repita el barrido. Lo que se dice aquí de los pasadores no vale "
        "después de escuadrar la cara."
    ),
    "finding.face-undecided": (
        "La cara está demasiado justa para decidir: salto {runout} ± {pm} frente a {limit}. {settle} "
        "No la mecanice ni le ponga lainas."
    ),
    "finding.face-warp": (
        "La cara no es plana, o una lectura está mal: de {total} TIR en el reloj solo {tilt} son "
        "inclinación; sobran {rest}. Eso no lo curan ni las lainas ni los pasadores."
    ),
    "finding.face-tir-over": (
        "La TIR del propio reloj, {total}, pasa del límite de {limit}, aunque la inclinación que "
        "contiene no. Busque una rebaba o una cara alabeada."
    ),
    "finding.face-swings-bore": (
        "Se espera que al escuadrar la cara el alojamiento se desplace {move}: de {before} a "
        "{after} de descentrado."
    ),
    "finding.face-may-swing-bore": (
        "Si la campana está inclinada en el bloque, escuadrarla mueve el alojamiento {move}: de "
        "{before} a {after} de descentrado. Si su cara trasera está mal cortada, el alojamiento "
        "no se mueve."
    ),
    "finding.depth-wanted": (
        "Ponga la profundidad de la campana para ver cuánto se desplaza el alojamiento al "
        "escuadrar la cara."
    ),
    "finding.bolts-wanted": "Ponga dónde están los tornillos para ver qué va bajo cada uno.",
    "finding.shims-short": (
        "Sus lainas no llegan a {at}: hacen falta {wanted}, tres de las más gruesas son {most}."
    ),
    "finding.holes-wanted": (
        "Ponga dónde están los agujeros de los pasadores para ver qué harían dos pasadores "
        "desiguales."
    ),
    "finding.chip-explains": (
        "Una viruta o rebaba de {height} en el borde de la brida delantera, cerca de {at}, "
        "explicaría toda esta inclinación. Mire allí primero."
    ),
    "finding.too-thick-for-dirt": (
        "Haría falta {height} en el borde cerca de {at} para esta inclinación: demasiado para "
        "suciedad. Busque un pasador saliente, una brida torcida, una pieza equivocada."
    ),
    "finding.pilot-distance-wanted": (
        "Ponga la distancia de la cara trasera al rodamiento piloto para ver qué efecto tiene allí."
    ),
    "finding.aim-for-bore": (
        "Los pasadores se orientan para el alojamiento: para el rodamiento piloto hacen falta un "
        "barrido de la cara sin juego axial y la distancia hasta él."
    ),
    "finding.pilot-outside": (
        "En el rodamiento piloto el eje de la caja está desviado {offset} ± {pm} frente a {limit}: "
        "fuera."
    ),
    "finding.pilot-undecided": (
        "En el rodamiento piloto está demasiado justo para decidir: desviado {offset} ± {pm} frente "
        "a {limit}."
    ),
    "finding.angle-near": (
        "El eje de la caja está desalineado {angle}, con seguridad no más de {sure}. Eso ya "
        "importa: {bearing} admite de {careful} a {generous}. Antes va el valor del fabricante."
    ),
    "finding.angle-beyond": (
        "El eje de la caja está desalineado {angle} (puede ser {sure}): más de lo que admite "
        "{bearing}, de {careful} a {generous}. Antes va el valor del fabricante."
    ),
    "finding.interference": (
        "El centrador de la caja es {tight} mayor que el alojamiento: no entra. Vuelva a medir los "
        "dos, y no lo meta a la fuerza con los tornillos."
    ),
    "finding.seat-loose": (
        "El alojamiento está dentro, pero la caja tiene en él {clearance} de holgura y puede quedar "
        "desviada {half}. Probabilidad de que la unión terminada quede dentro: {chance}."
    ),
    "finding.moved-wrong-way": (
        "El alojamiento fue al revés: {size} hacia {direction}, en contra de la orientación. "
        "Compruebe, antes de girar nada, {causes}."
    ),
    "finding.moved-mirrored": (
        "El alojamiento fue como si las 3 y las 9 estuvieran cambiadas: {size} hacia {direction}, "
        "con los pasadores orientados a {aim}. ¿Se tomaron la orientación o las lecturas desde "
        "delante? Averígüelo antes de girar nada."
    ),
    "cause.aim": "la orientación de los pasadores (¿hacia el otro lado?)",
    "cause.sense": "los signos más y menos del reloj",
    "cause.before": "los pasadores puestos para el primer barrido",
    "cause.sides": "de qué lado están las 3 (visto desde atrás)",
    "finding.moved-otherwise": (
        "Se movió {size} ± {pm} hacia {direction}; se esperaban {told} hacia {aim}. Mire primero: "
        "¿se puso la orientación tal como se montó, no como se había previsto? ¿Asienta bien la "
        "campana?"
    ),
    "finding.trim-noise": (
        "Girar los pasadores mejoraría {gain}, menos que {pm}, la incertidumbre de las lecturas. No "
        "se puede ver si ayuda."
    ),
    "size.stock": "serie",
    "finding.trim-other-size": (
        "Otra medida es mejor: pasadores de {size} deberían dejar {after}; estos, en el mejor "
        "caso, {trimmed} tras girarlos {turn}."
    ),
    "finding.bolt-holes": (
        "Los agujeros de los tornillos son demasiado justos: los pasadores de {size} necesitan "
        "{wanted} de holgura en diámetro, y hay {clearance}."
    ),
    "finding.companion-outside": (
        "Hay salto en {what}: {tir} ± {pm} TIR frente a {limit}, fuera. Gira con el cigüeñal: mover "
        "la campana no lo cura."
    ),
    "finding.companion-end-play": (
        "El juego axial entra entero en el barrido en {what}: en cada parada empuje el cigüeñal "
        "hasta el tope hacia el mismo lado, suelte, lea."
    ),
    "finding.companion-undecided": (
        "Demasiado justo para decidir en {what}: {tir} ± {pm} TIR frente a {limit}. Gira con el "
        "cigüeñal: mover la campana no lo cura."
    ),
    "settle.could": "Para decidirlo, {measure}: ± {now} pasa a unos ± {then}.",
    "settle.helps": "Lo que más gana: {measure} (± {now} pasa a unos ± {then}). Hace falta más que eso.",
    "settle.none": "Ninguna medición práctica lo decide.",
    "settle.positions": "hacer el barrido en ocho posiciones",
    "settle.sweep": "hacer un barrido más",
    "settle.dial": "usar un reloj que marque hasta {step}",
    "settle.sag": "hacer la prueba de caída del soporte",
    # The page
    "fault.request": "La página pidió algo que no es un formulario rellenado.",
    "page.unfinished": "El barrido {n} en {what} no está terminado, y todavía no cuenta.",
    "what.of_round": "{what}, ronda {n}",
    "page.waiting": "Falta todavía la lectura de {positions}.",
    # The answer
    "answer.offset": "Descentrado {offset} (TIR {tir}) hacia {direction}",
    "answer.offset_nowhere": "Descentrado {offset} (TIR {tir}), dirección desconocida",
    "answer.pm": "± {pm} (con un 95% de seguridad)",
    "answer.swing": "Prueba rápida: la aguja debe recorrer en total cerca de {swing}",
    "answer.direction_pm": "{degrees} en sentido horario desde las 12 (± {pm}), visto desde atrás",
    "answer.limit": "Límite: descentrado {offset}, que es TIR {tir}",
    "answer.no_limit": "Sin límite",
    "answer.chance_face": "Probabilidad de que la cara esté dentro del límite: {chance}",
    "answer.chance_pilot": (
        "Probabilidad de que la línea hasta el piloto esté dentro del límite: {chance}"
    ),
    "answer.chance": "Probabilidad de que el alojamiento esté dentro del límite: {chance}",
    "answer.verdict.within": "Dentro del límite",
    "answer.verdict.outside": "Fuera del límite",
    "answer.verdict.undecided": "Demasiado justo para decidir",
    "answer.verdict.within_but_face": "Alojamiento dentro, cara fuera",
    "answer.verdict.again": "No es de fiar: repita el barrido",
    "answer.verdict.none": "Sin límite con el que juzgar",
    "do.fix.looks-like-inches": "Escriba en milésimas las lecturas en {what}: 0,004 pulgadas son 4.",
    "do.fix.foreign-reading": "Repita la lectura en {what} a {at}.",
    "do.fix.closing-error": (
        "Busque qué resbaló o se atascó: {sweep} cerró con el reloj a {error}. Después repita el "
        "barrido."
    ),
    "do.fix.moved-wrong-way": (
        "Averigüe qué está mal: la orientación de los pasadores, o el más y el menos del reloj. "
        "Antes no gire nada."
    ),
    "do.fix.moved-mirrored": (
        "Averigüe si la orientación o las lecturas se tomaron desde delante: las 3 y las 9 parecen "
        "cambiadas. Antes no gire nada."
    ),
    "do.fix.interference": (
        "Vuelva a medir el alojamiento y el centrador. No meta la caja a la fuerza con sus tornillos."
    ),
    "do.note-return": (
        "Siga girando hasta donde empezó {sweep}, y anote a cuánto de su valor inicial está allí "
        "el reloj."
    ),
    "do.sweep-face": (
        "Haga también el barrido de la cara trasera, antes de poner pasadores: escuadrarla puede "
        "mover el alojamiento."
    ),
    "do.resweep-face": (
        "Repita el barrido de la cara: empuje el cigüeñal hasta el tope siempre hacia el mismo lado, "
        "suelte, lea."
    ),
    "do.settle-face": "Mida otra vez la cara antes de pasar al alojamiento. {settle}",
    "do.face-at-limit": (
        "La cara está en su límite, y medir más no lo decide. No la mecanice ni le ponga lainas."
    ),
    "do.clean-joint": (
        "La cara está fuera. Afloje la campana, limpie la junta, busque una rebaba o un borde "
        "saliente. Apriete como antes, y repita el barrido de la cara y del alojamiento como "
        "comprobación."
    ),
    "do.sweep-face-twice": "La inclinación volvió. Antes de mecanizar nada, haga un barrido más de la cara: ¿sale lo mismo?",
    "do.steady-the-dial": "Los barridos en {what} difieren: algo se mueve. Apriete soporte y base, compruebe juego axial y contacto, y haga dos barridos más. Si nada está flojo, ponga una dispersión mayor del reloj.",
    "do.find-tilt-cause": "La inclinación volvió con la junta limpia. Quite la campana y mire las dos caras de la junta; si había algo entre ellas, esa es la causa: repita el barrido. Si no, apóyela por su brida delantera en un mármol, haga el barrido de la cara trasera, y anote en las medidas qué lado está mal.",
    "do.check-sense": "Antes de poner lainas o mecanizar: meta el vástago con la mano, el reloj debe ir hacia donde dice el formulario. Y mire desde atrás: las 3 están a la derecha.",
    "do.square-front": (
        "Ponga lainas o mecanice la brida delantera como se dice en «Escuadrar la cara»."
    ),
    "do.square-rear": "Haga mecanizar la cara trasera como se dice en «Escuadrar la cara».",
    "do.start-anew": (
        "Después empiece un trabajo nuevo: repita el barrido de la cara y del alojamiento antes de "
        "poner pasadores."
    ),
    "do.face-not-flat": "La cara no es plana: queda {rest} aparte de la inclinación. Busque una rebaba o un golpe, repáselo con piedra y repita el barrido de la cara.",
    "do.sweep-eight": "Repita el barrido del alojamiento en ocho posiciones: una lectura está mal, o el alojamiento no es redondo.",
    "do.aim-for-pilot": "El alojamiento está dentro, la línea hasta el piloto no. Elija orientar los pasadores hacia el rodamiento piloto, para ver qué logran allí.",
    "do.pilot-stays-out": "El alojamiento está dentro, la línea hasta el piloto no, y ningún par del cajón lo arregla. Vea qué haría escuadrar la cara.",
    "do.mend-part": "Arregle o cambie primero lo que gira: {what}. Gira con el cigüeñal, y ninguna campana lo cura.",
    "do.no-limit": "Ponga el límite del fabricante: sin él, nada se da por dentro.",
    "do.leave": "Deje la campana donde está.",
    "do.tighten-and-sweep": (
        "Asegure los pasadores, apriete los tornillos al par indicado, y repita el barrido como "
        "comprobación."
    ),
    "do.done": "Terminado: dos barridos seguidos están dentro. Cierre.",
    "do.settle-bore": "Mida otra vez antes de decidir. {settle}",
    "do.or-fit": "O muévala ya. {fit}",
    "do.cannot-settle": "Ninguna medición práctica lo decide.",
    "do.treat-as-out": "Délo por fuera: nada de lo disponible deja menos con seguridad.",
    "do.back-to-stock": (
        "Vuelva a los pasadores normales y repita el barrido: lo que hacen dos pasadores distintos no "
        "se sabe sin sus agujeros."
    ),
    "do.dowels-do-not-hold": "Seis intentos, y no se queda dentro: la campana no asienta siempre igual. Mire el ajuste de pasadores y tornillos.",
    "do.nothing-fits": "No hay en el cajón un par que con seguridad deje menos que ahora.",
    "do.check-fit": "Vea por qué los pasadores no hicieron lo que llevan marcado: ¿asienta la campana en los dos, y están orientados como se anotó? Asiéntela de nuevo.",
    "do.open-holes": (
        "Agrande los agujeros de los tornillos hasta una holgura de {clearance} en el diámetro, si el "
        "fabricante lo permite: entonces sirven pasadores de {size}."
    ),
    "do.get-pair": "Consiga un par de unos {size} de excentricidad.",
    "do.get-size": (
        "Consiga una pareja de unos {size} de descentrado: la mejor de las disponibles deja {left}."
    ),
    "do.beyond-dowels": (
        "Más allá de los pasadores. Busque la causa: suciedad en la junta, una campana equivocada o "
        "torcida, un reloj mal leído."
    ),
    "do.fit-unlike": (
        "Monte dos pasadores distintos: {dowels}. Descentrado esperado después: {expected}."
    ),
    "do.unlike": "a {hole} el de {size}, orientado a {aim}",
    "do.unlike-stock": "a {hole} el normal",
    "do.move": "Mueva la campana {side}, hacia {direction}: {offset}.",
    "do.reseat": (
        "Primero afloje, limpie la junta, apriete como antes y repita el barrido: ¿sale lo mismo?"
    ),
    "do.fit-dowels": (
        "Monte pasadores excéntricos de {offset}, los dos orientados a {aim}. Descentrado esperado "
        "después: {expected} (TIR {tir})."
    ),
    "do.standard-dowels": (
        "Vuelva a los pasadores normales. Descentrado esperado después: {expected} (TIR {tir})."
    ),
    "do.recheck": "Después repita el barrido: decide la comprobación, no este valor.",
    "option.leave": "dejar como está",
    "option.standard": "pasadores normales",
    "option.tight": "{what} (agujeros de los tornillos demasiado justos)",
    "option.dowels": "pasadores de {offset}, orientados a {aim}",
    "option.expected": "{offset} (TIR {tir})",
    "level.stop": "ALTO",
    "level.caution": "Precaución",
    "level.note": "Nota",
    # Parts of the sheet beside the bore
    "section.face": "Cara",
    "section.squaring": "Escuadrar la cara",
    "section.pilot": "En el rodamiento piloto",
    "section.seat": "La caja en el alojamiento",
    "section.trim": "Qué hicieron los pasadores",
    "section.pairs": "Dos pasadores desiguales",
    "section.chip": "Qué haría una viruta",
    "section.companion": "Gira con el cigüeñal: {what}",
    "face.runout": "Salto por la inclinación {runout} ± {pm}, en el radio barrido",
    "face.rearmost": "Más atrás hacia {direction}",
    "face.slope": "Pendiente {angle}",
    "face.not_judged": "Sin juzgar: puede haber juego axial en ella",
    "face.limit": "Límite: salto (TIR) {limit} en ese radio",
    "face.total": "TIR en el reloj {total}; además de la inclinación {rest}",
    "squaring.find_out": (
        "¿Qué lado está mal? Con la brida delantera sobre un mármol, haga el barrido de la cara "
        "trasera: si es paralela, está mal el lado del bloque; si no, la cara trasera está mal "
        "cortada. O haga el barrido de la cara del bloque: la misma inclinación a la misma hora "
        "quiere decir que el bloque está mal."
    ),
    "squaring.if_tipped": "Si la campana está inclinada en el bloque:",
    "squaring.if_crooked": "Si su cara trasera está mal cortada:",
    "squaring.taper": (
        "Quitar de la brida delantera: {slope} de lado a lado, lo más profundo hacia {at}"
    ),
    "squaring.recut": "De la cara trasera: {slope}, lo más profundo hacia {at}",
    "squaring.across": "De lado a lado entre los tornillos son {depth}",
    "squaring.bore": (
        "Alojamiento esperado después: descentrado {offset} hacia {direction}. Repita el barrido."
    ),
    "squaring.left": (
        "Redondeado a lo disponible, deja un salto de {runout}; los paquetes cojean {rock}"
    ),
    "squaring.hang": (
        "Las lainas solo en los tornillos dejan la brida en el aire entre ellos: es mejor un anillo "
        "cónico entero, o mecanizar. Compruebe el encaje de los pasadores y el engrane del motor de "
        "arranque."
    ),
    "squaring.short": "{stack} (no llega)",
    "squaring.none": "ninguna",
    "squaring.head.bolt": "Tornillo a",
    "squaring.head.shim": "Laina",
    "squaring.head.ideal": "Exacto",
    "pilot.offset": "Eje de la caja desviado {offset} ± {pm} hacia {direction}",
    "pilot.offset_nowhere": "Eje de la caja desviado {offset} ± {pm}, dirección desconocida",
    "pilot.angle": "Desalineado {angle} ± {pm}",
    "seat.clearance": "Holgura {clearance}: la caja puede quedar desviada hasta {half}",
    "seat.chance": "Probabilidad de que la unión terminada esté dentro del límite: {chance}",
    "deed.moved": "Los pasadores movieron el alojamiento {size} ± {pm} hacia {direction}",
    "deed.agrees": "Es lo que llevan marcado, hasta donde las lecturas pueden decirlo.",
    "trim.turn": (
        "Gire los dos pasadores {turn} {way}, visto desde atrás, para orientarlos a {aim} "
        "({degrees}). Descentrado esperado después: {expected} (TIR {tir})."
    ),
    "trim.chance": "Probabilidad de quedar dentro tras ese giro: {chance}",
    "trim.stop": "El alojamiento está dentro: pare aquí.",
    "way.clockwise": "en sentido horario",
    "way.anticlockwise": "en sentido antihorario",
    "pairs.caution": (
        "Para expertos: cada pasador tiene su propia medida y orientación, y ambas deben ser "
        "correctas. Márquelos antes de montarlos, y repita el barrido."
    ),
    "pairs.turn": "Con ellos la campana gira hasta {turn}°.",
    "pairs.head.dowel": "Pasador a {at}",
    "pairs.head.left": "Descentrado restante",
    "pairs.head.misfit": "Desajuste entre agujeros",
    "pairs.head.chance": "Prob. de estar dentro",
    "pairs.standard": "normal",
    "pairs.dowel": "{size}, orientado a {aim}",
    "joint.front": "bajo la brida delantera",
    "joint.rear": "sobre la cara trasera",
    "part.bore": "El alojamiento",
    "part.nose": "La punta del eje primario",
    "part.tail": "La cola de la caja",
    "chip.what": "Una viruta de {height} a {at} {joint} inclina hasta {angle}.",
    "chip.moves": "{part} se va {move} hacia {direction}.",
    "chip.still": "{part} se queda donde está.",
    "chip.unknown": "{part}: ponga las medidas de la campana para verlo.",
    "chip.most": "Si los tornillos doblan la brida alrededor de la viruta, es menos.",
    "companion.tir": (
        "TIR {tir} ± {pm}, que es descentrado {offset}, hacia su marca de {direction}"
    ),
    "companion.limit": "Límite: TIR {tir}",
    "companion.turns": "Gira con el cigüeñal: mover la campana no lo cambia.",
    # What the figures are: two sentences each
    "term.offset": "Descentrado",
    "term.tir": "TIR",
    "term.plus-minus": "±",
    "term.direction": "Dirección",
    "term.limit": "Límite",
    "term.chance": "Probabilidad",
    "term.left": "Descentrado restante",
    "term.runout": "Salto",
    "term.rearmost": "Más atrás",
    "term.slope": "Pendiente",
    "term.total": "TIR además de la inclinación",
    "term.taper": "Cuña",
    "term.shim": "Laina",
    "term.swing": "Alojamiento esperado después",
    "term.gearbox-axis": "Eje de la caja",
    "term.out-of-line": "Desalineado",
    "term.clearance": "Holgura",
    "term.finished-joint": "Unión terminada",
    "term.moved": "Movido",
    "term.turn": "Giro",
    "term.unlike": "Pasadores desiguales",
    "term.misfit": "Desajuste entre agujeros",
    "term.chip": "Viruta",
    "term.companion": "Gira con el cigüeñal",
    "means.offset": "A cuánto está el centro del alojamiento del eje del cigüeñal. Es la mitad del TIR.",
    "means.tir": "Lectura total del indicador: cuánto recorrería en una vuelta un reloj sin caída, según la onda que ajusta las lecturas. Es el doble del descentrado, así que un límite dado como TIR parece el doble.",
    "means.plus-minus": "Cuánto puede fallar el valor, con lo que se leyó y cómo se leyó. En 95 casos de 100 el verdadero no está más lejos.",
    "means.direction": "Hacia qué hora del reloj está desviado el alojamiento, visto desde atrás del motor. La campana debe ir al lado contrario.",
    "means.limit": "Cuánto permite el fabricante que se desvíe el alojamiento. Si no puso el valor del fabricante, es solo práctica común.",
    "means.chance": "Qué probabilidad hay de que el alojamiento verdadero esté dentro del límite, contando toda la duda de las lecturas. Desde {sure} se da por dentro, hasta {rest} por fuera, y entre las dos nadie lo sabe.",
    "means.left": "Dónde se espera el alojamiento con esa elección de pasadores. La comprobación con el reloj decide si quedó así.",
    "means.runout": "Cuánto recorre un reloj perpendicular sobre la cara inclinada en una vuelta completa, en el radio barrido. Con el doble de radio, la misma inclinación da el doble de salto.",
    "means.rearmost": (
        "El lado en que la cara queda más atrás, hacia la caja. Allí la campana es demasiado "
        "larga, hay algo bajo la brida delantera, la cara del bloque no está a escuadra o la "
        "cara trasera está mal cortada."
    ),
    "means.slope": "Cuánto se inclina la cara por cada pulgada o metro de lado a lado. No depende del radio en que se hizo el barrido.",
    "means.total": "El recorrido del propio reloj, y cuánto de él no es inclinación sino alabeo, rebaba o una lectura mala. Esa parte no la curan ni las lainas ni los pasadores.",
    "means.taper": (
        "Lo que hay que mecanizar para que la cara trasera quede a escuadra. Es más profundo en "
        "el lado que queda más atrás."
    ),
    "means.shim": "Qué poner bajo la brida en cada tornillo, de lo disponible, para escuadrar la cara. Un paquete que cojea no apoya plano en todos los tornillos.",
    "means.swing": (
        "Escuadrar una campana inclinada mueve el alojamiento, la inclinación por la "
        "profundidad; mecanizar una cara trasera mal cortada, no. Por eso se repite el barrido "
        "del alojamiento antes de elegir pasadores."
    ),
    "means.gearbox-axis": "Por dónde pasa la línea de la caja junto al rodamiento piloto. Incluye el descentrado del alojamiento y la inclinación de la cara por la distancia.",
    "means.out-of-line": "El ángulo entre la caja y el cigüeñal. Un rodamiento aguanta solo un poco antes de que su borde lleve la carga.",
    "means.clearance": "Cuánto menor es el centrador de la caja que el alojamiento en que entra. La caja puede quedar desviada la mitad, esté donde esté el alojamiento.",
    "means.finished-joint": "La probabilidad de que la propia caja quede dentro del límite, contando su juego en el alojamiento. El alojamiento puede estar dentro y la unión seguir en duda.",
    "means.moved": "Cuánto y hacia dónde fue el alojamiento al montar los pasadores, según las lecturas. Se compara con lo que llevan marcado.",
    "means.turn": "Cuánto girar los dos pasadores en sus agujeros, visto desde atrás. Cuenta con lo que hicieron, no con lo que llevan marcado.",
    "means.unlike": "Dos pasadores de distinta medida u orientación pueden llevar el alojamiento adonde no llega ninguna pareja igual. Entonces la campana también gira un poco.",
    "means.misfit": "Cuánto abren o cierran los dos pasadores la distancia entre agujeros. Debe quedar dentro de su holgura, o la campana no entra.",
    "means.chip": "Un poco de suciedad en la junta inclina lo que se atornilla contra ella, y la desviación crece con la distancia. Esto es lo máximo que puede moverlo: una brida que se dobla alrededor se mueve menos.",
    "means.companion": "El salto de la propia pieza: reloj en el bloque, la pieza gira debajo. Va con el cigüeñal, así que no lo cura ningún pasador ni ninguna laina.",
    # The sheet
    "sheet.title": "Barrido del alojamiento",
    "sheet.round": "Ronda {n}: {name}",
    "usual.first": "como se encontró",
    "usual.later": "ronda {n}",
    "sheet.bore": "Alojamiento: {readings}",
    "sheet.face": "Cara: {readings}",
    "sheet.reading": "{at} {value}",
    "sheet.options": "Qué dejaría cada opción (descentrado en {unit}, al lado la TIR):",
    "sheet.option": "{choice}: {expected}",
    "sheet.option_chance": "; dentro: {chance}",
    "sheet.option_pilot": "; en el rodamiento piloto {pilot}",
    "sheet.section": "{title}: {verdict}",
    "sheet.findings": "A tener en cuenta:",
    "sheet.finding": "{level}: {text}",
    "sheet.caution": (
        "Visto desde atrás del motor, mirando hacia delante. Mandan los límites, los pares de "
        "apriete y el procedimiento del fabricante; sujete el motor, desconecte la batería, gire "
        "el cigüeñal a mano."
    ),
    # The practice housing
    "practice.title": "Ejercicio {seed}, nivel {level}",
    "practice.level.1": (
        "Solo el alojamiento está desviado. Reloj perfecto, soporte rígido, cara a escuadra."
    ),
    "practice.level.2": "Un soporte que cae, un reloj que dispersa, pasadores con juego.",
    "practice.level.3": "Todo eso, y una cara inclinada.",
    "practice.dial_title": "El reloj, ampliado",
    "practice.dial": "una raya son {step} {unit}, una vuelta {turn} {unit}",
    "practice.crank_title": "La campana desde atrás, con el reloj llevado por el cigüeñal",
    "practice.touches.inside": "El reloj toca el alojamiento por dentro.",
    "practice.touches.outside": "El reloj toca un saliente redondo por fuera.",
    "practice.touches.forward": "El reloj toca la cara trasera, con el vástago hacia delante.",
    "practice.touches.rearward": "El reloj toca la cara, con el vástago hacia atrás.",
    "practice.spoken": "{at}: {reading}",
    "practice.note": "Anotar {reading} a {at}",
    "practice.note_closing": "Anotar {reading}, de vuelta a {at}",
    "practice.as_found": "Como se encontró",
    "practice.on_standard": "Comprobación {n}: pasadores normales",
    "practice.on_dowels": "Comprobación {n}: pasadores de {offset}, orientados a {aim}",
    "practice.not_swept": "sin barrido",
    "practice.head.round": "Ronda",
    "practice.head.true": "La verdad",
    "practice.head.found": "Usted encontró",
    "practice.head.off": "Diferencia",
    "practice.off": "{miss}: cubierto por la incertidumbre de las lecturas",
    "practice.off_beyond": "{miss}: más que la incertidumbre de las lecturas",
    "practice.mirrored": "al revés: hay un signo cambiado",
    "practice.runout": "Salto {runout}, más atrás hacia {direction}",
    "practice.inside": (
        "Tal como está ahora, el alojamiento está de verdad dentro del límite de {limit}."
    ),
    "practice.outside": (
        "Tal como está ahora, el alojamiento está de verdad fuera del límite de {limit}."
    ),
    "practice.droop": "Caída del soporte, abajo menos arriba: {droop}",
    "practice.dowels": "Los pasadores hacen el {gain}% de lo que llevan marcado, girado {lag}° {way}.",
    # The sheet on paper
    "paper.title": "Campana y cigüeñal: qué se midió",
    "paper.view": "Visto desde atrás del motor, mirando hacia delante. La TIR es el doble del descentrado.",
    "paper.to_do": "Qué hacer",
    "paper.found": "Límites y reloj",
    "paper.doubts": "A tener en cuenta",
    "paper.done": "Revisado y marcado",
    "paper.open": "SIN marcar",
    "paper.signature": "Firma",
    "paper.link": "Lo mismo en un teléfono, recalculado a partir de las lecturas:",
    "paper.caution": (
        "Mandan los límites, los pares de apriete y el procedimiento del fabricante; después, las "
        "normas locales y las personas cualificadas."
    ),
    "paper.face_limit": "Límite de la cara: salto (TIR) {runout} en el radio barrido",
    "paper.face_limit_at": "Límite de la cara: salto (TIR) {runout} en un radio de {radius}",
    "paper.pilot_limit": "Límite en el rodamiento piloto: descentrado {offset}, que es TIR {tir}",
    "paper.source": "Origen de los límites: {source}",
    "paper.no_source": "Origen de los límites: no se puso",
    "paper.usual_limit": "Origen de los límites: no se puso; el del alojamiento es práctica común",
    "paper.length.inch": "{value} pulgadas",
    "paper.length.metric": "{value} mm",
    "paper.dial": (
        "Reloj: división {step}, exactitud ±{accuracy}, dispersión {scatter}; marca más cuando el "
        "vástago {plus}"
    ),
    "paper.plunger_in": "entra",
    "paper.plunger_out": "sale",
    "paper.droop": "Caída del soporte, medida: {sag}",
    "paper.droop_unknown": "Caída del soporte: sin medir, como máximo {most}",
    "paper.contact_angle": "Ángulo de contacto {angle}",
    "paper.plate": "Chapa entre el bloque y la campana: {thickness} de grosor",
    "paper.lift": "Levantamiento del cigüeñal {lift}",
    "paper.results": "Resultado de cada ronda, en {unit}",
    "paper.round": "Ronda {n}",
    "paper.pm": "{value} ± {pm}",
    "paper.verdict.within": "dentro",
    "paper.verdict.outside": "fuera",
    "paper.verdict.undecided": "demasiado justo para decidir",
    "paper.head.round": "Ronda",
    "paper.head.dowels": "Pasadores puestos",
    "paper.head.offset": "Descentrado",
    "paper.head.tir": "TIR",
    "paper.head.toward": "Hacia",
    "paper.head.chance": "Prob. de estar dentro",
    "paper.head.bore": "Alojamiento",
    "paper.head.face": "Salto de la cara",
    "paper.head.pilot": "Desvío en el piloto",
    "paper.head.sweep": "Barrido",
    "paper.head.closing": "Vuelta",
    "paper.readings_of": "{round}: qué marcó el reloj, tocando por {contact}",
    "paper.inside": "dentro",
    "paper.outside": "fuera",
    "paper.row.bore": "Alojamiento",
    "paper.row.part": "Barrido",
    "paper.row.face": "Cara, radio {radius}, vástago {plunger}, {end}",
    "paper.row.opposite": "Cara, segundo reloj",
    "paper.forward": "hacia delante",
    "paper.rearward": "hacia atrás",
    "paper.free": "juego axial sin resolver",
    "paper.held": "cigüeñal sujeto hacia un lado",
    "paper.second": "con un segundo reloj",
    "paper.sweep": "{what}, {n}",
    # The link
    "link.none": "Esta página muestra un trabajo que viene con un enlace, y en la dirección no hay ninguno.",
    "link.cut": (
        "Este enlace está cortado o dañado: le falta una parte o está cambiada. Pídalo otra vez y "
        "ábralo entero."
    ),
    "link.foreign": "Este enlace no lo hizo Sweepsheet.",
    "link.newer": (
        "Este enlace lo hizo un Sweepsheet más nuevo. Vuelva a cargar esta página cuando tenga "
        "cobertura, y abra el enlace otra vez."
    ),
    "link.longer": "Este enlace es más largo que cualquiera de Sweepsheet ({high} caracteres).",
    "link.too_long": (
        "Este trabajo es demasiado largo para un enlace: tendría {got} caracteres, y sin que se "
        "corte se pueden enviar {high}. Imprímalo, o envíe el archivo."
    ),
    "link.job": "El trabajo de este enlace no se puede leer: {why}.",
    "link.figures": "Los valores de este enlace no tienen la forma en que los escribe Sweepsheet.",
    # Files
    "file.saved": "El trabajo está guardado.",
    "file.saved_all": "{n} trabajos están guardados.",
    "file.csv_saved": (
        "Las lecturas están guardadas. Un CSV no lleva nada más: límites, reloj, medidas, "
        "pasadores, nombres y notas están en el archivo del propio trabajo."
    ),
    "file.opened": "El trabajo está abierto como uno nuevo.",
    "file.opened_all": "{n} trabajos están abiertos como nuevos.",
    "file.csv_opened": (
        "Las lecturas están abiertas como un trabajo nuevo. Un CSV no lleva nada más: revise "
        "límites, reloj y contacto, medidas, pasadores y el radio de la cara."
    ),
    "file.one_wrong": "Una cosa todavía no está bien o falta.",
    "file.wrong": "{n} cosas todavía no están bien o faltan.",
    "file.more": "y {n} más",
    "file.many": "En un archivo caben de uno a {high} trabajos; hay: {got}.",
    "file.large": "Este archivo es mayor que cualquiera nuestro: se admiten {high} bytes.",
    "file.foreign": "Esto no es ni un archivo de trabajo de Sweepsheet ni lecturas en CSV.",
    "file.jobs": "Este archivo de trabajos contiene algo que no es un trabajo.",
    "file.version": "Este archivo tiene una versión que nunca existió: {got}.",
    "file.newer": (
        "Este archivo lo hizo un Sweepsheet más nuevo (versión {got}; este lee la {wanted}). Vuelva "
        "a cargar esta página cuando tenga cobertura, y abra el archivo otra vez."
    ),
    "csv.header": "Este CSV no empieza con nuestras columnas: {columns}.",
    "csv.broken": "Este CSV está roto: {why}.",
    "csv.long": "Este CSV es más largo que cualquier trabajo: se admiten {high} líneas.",
    "csv.empty": "En este CSV no hay lecturas.",
    "csv.units": "Las lecturas de un trabajo están todas en milésimas (thou) o todas en mm.",
    "csv.cells": "Línea {line} del CSV: se piden {wanted} celdas; hay: {got}.",
    "csv.part": "Línea {line} del CSV: lo que se barrió no es una pieza conocida.",
    "csv.unit": "Línea {line} del CSV: la unidad es thou (milésimas) o mm.",
    "csv.count": "Línea {line} del CSV: {column}: se pide un número de 1 a {high}.",
    "csv.twice": "Línea {line} del CSV: el mismo lugar aparece dos veces en un barrido.",
    "csv.position": "Línea {line} del CSV: una lectura sin posición.",
    # The drawing
    "flange.title": "La brida delantera desde atrás, con una laina en cada tornillo",
    "flange.desc": "Lainas: {shims}.",
    "flange.shim": "{at}: {shim}",
    "flange.view": "brida delantera, desde atrás; lainas en {unit}",
    "flange.deepest": "mecanizar más aquí",
    "side.title": "Eje del cigüeñal y eje de la caja, de lado y desde arriba",
    "side.desc": (
        "El eje de la caja está desviado {bore} en el alojamiento y {pilot} en el rodamiento piloto."
    ),
    "side.from_side": "De lado (desde las 9)",
    "side.from_above": "Desde arriba (las 3 arriba)",
    "side.exaggerated": "desvíos {times} veces mayores que las longitudes",
    "side.forward": "delante a la izquierda; en rojo, el eje de la caja",
    "side.face": "cara trasera",
    "side.pilot": "piloto",
    "side.crank": "cigüeñal",
    "side.gearbox": "caja",
    # Guía por un barrido
    "guide.way.clockwise": "en sentido horario",
    "guide.way.anticlockwise": "en sentido antihorario",
    "guide.way.one_way": "siempre en el mismo sentido",
    "guide.unreadable": "Sin dibujo, porque no se entienden las posiciones. {why}",
    "guide.ready": "Preparar",
    "guide.ready_help": "Antes de girar el cigüeñal:",
    "guide.zero": "Lleve el reloj a {at}; póngalo a cero. No hace falta buscar el punto bajo ni el alto.",
    "guide.zero_both": "Ponga el primer reloj en {at}, el segundo enfrente, y ajuste los dos a cero.",
    "guide.base": "Base en la brida del cigüeñal o el volante, tornillos apretados, plato de embrague fuera.",
    "guide.wipe": "Limpie el alojamiento. Punta lejos del chaflán y de golpes.",
    "guide.rim": "Limpie la cara. Toque cerca del borde, fuera de los agujeros.",
    "guide.sense": "Meta el vástago con la mano: el reloj debe ir a {sign}. Si no, cámbielo en el formulario.",
    "guide.travel": (
        "Vástago más o menos a medio recorrido: dé antes una vuelta entera, y no debe llegar "
        "a ningún extremo de su recorrido."
    ),
    "guide.stiff": "Empuje un poco el soporte: la aguja debe volver a la misma raya.",
    "guide.choose_push": "Juego axial: elija un lado, adelante o atrás, para empujar el cigüeñal hasta el tope. Haga palanca con cuidado en la brida o el volante, nunca en un rodamiento ni en el reloj.",
    "guide.afloat": "El juego axial entra entero en la lectura: empuje el cigüeñal hasta el tope, siempre hacia el mismo lado, suelte, y dígalo en el formulario.",
    "guide.bar": "Bujías fuera. Palanca en el tornillo del cigüeñal solo en el sentido de apriete.",
    "guide.helper": "Avise a su ayudante, que está delante: gire despacio, {front} visto desde allí, y pare cuando se le diga.",
    "guide.helper_one_way": "Avise a su ayudante: gire despacio, {way}, y pare cuando se le diga.",
    "guide.position": "{at}",
    "guide.turn": "Gire el cigüeñal {way} hasta {at}.",
    "guide.turn_front": "Gire el cigüeñal {way} hasta {at}. Para el ayudante, delante: {front}.",
    "guide.turn_back": "Gire el cigüeñal {way}, hasta volver a {at}, donde empezó.",
    "guide.push": "Empuje el cigüeñal hasta el tope hacia el lado elegido y suelte.",
    "guide.settle": "Quite la carga de la palanca. La aguja está quieta, y no al final de su recorrido.",
    "guide.upside_down": "Aquí el reloj está del revés: compruebe el signo. En un espejo va al contrario.",
    "guide.past": "¿Se pasó? Dé otra vuelta hasta ella. Gire hacia atrás solo si el fabricante lo permite.",
    "guide.read": "Lea el reloj.",
    "guide.read_both": "Lea los dos relojes antes de que se mueva nada.",
    "guide.back": "De vuelta al inicio",
    "guide.back_zero": "Más de {most} de diferencia: algo resbaló. Repita el barrido.",
    "guide.start": "inicio",
    "guide.start_at": "El barrido empieza en {at}.",
    "drawing.title": "La campana desde atrás, mirando hacia delante",
    "drawing.desc": (
        "El centro del alojamiento está a {offset} del centro del cigüeñal, hacia {direction}."
    ),
    "drawing.view": "vista desde atrás, mirando hacia delante",
    "drawing.scale": "centro ampliado ~{times} ×",
    "drawing.crank": "cigüeñal",
    "drawing.bore": "alojamiento",
    "drawing.limit": "límite {limit}",
    "drawing.move": "mover",
    "drawing.after": "tras pasadores",
    "drawing.rearmost": "cara más atrás",
    "drawing.region": "zona del 95%",
}

PAGE: dict[str, str] = {
    # Everywhere
    "unit.small.inch": "milésimas",
    "unit.small.metric": "mm",
    "unit.long.inch": "pulgadas",
    "unit.long.metric": "mm",
    "language.name": "Español",
    "page.no_script": "Esta página necesita JavaScript, y no lo encuentra.",
    "page.download": "Descarga del cálculo",
    "page.own_job": "Su propio trabajo",
    "page.practise": "Practicar",
    "page.how": "Cómo se calcula",
    "page.people": "Para personas que conocen el oficio.",
    "page.licences": "Licencias",
    "page.example_aim": "10:30 o 315°",
    # Why the page can't start (boot.js)
    "start.no_modules": "Este navegador es demasiado viejo para esta página: no puede cargar programas hechos por partes (módulos). Actualícelo, o abra la página en otro.",
    "start.too_old": "Este navegador es demasiado viejo para esta página: su JavaScript es anterior a 2022. Actualícelo, o abra la página en otro.",
    "start.lost": "No llegó una parte de esta página. Vuelva a cargar la página.",
    "start.failed": "Esta página no pudo arrancar en este navegador ({why}). Actualícelo, o abra la página en otro.",
    # The calculation (messenger.js, python-files.js)
    "python.no_worker": "Este navegador no puede hacer el cálculo: no tiene procesos de fondo con módulos.",
    "python.no_wasm": "Este navegador no puede hacer el cálculo: WebAssembly falta o está desactivado.",
    "python.old_wasm": "Este navegador no puede hacer el cálculo: su WebAssembly es demasiado viejo. Actualice el navegador.",
    "python.not_started": "El cálculo no pudo arrancar: {why}",
    "python.no_file": "uno de sus archivos no llegó, o este navegador es demasiado viejo.",
    "python.stalled": "El cálculo no arrancó: hace rato que no llega nada. Vuelva a cargar la página.",
    "python.lost": "El archivo {name} no llegó ({status}).",
    # Use without a signal (offline.js, sw.js)
    "offline.not_yet": "Sin cobertura: todavía no.",
    "offline.take": "Tomarla ahora",
    "offline.unsupported": "No se puede guardar para usarla sin cobertura: {why}.",
    "offline.installing": "Guardándose para usarla sin cobertura …",
    "offline.ready": "Lista para trabajar sin cobertura.",
    "offline.failed": "No se pudo guardar para usarla sin cobertura: {why}",
    "offline.update-waiting": "Lista para trabajar sin cobertura. Hay una versión más nueva: tómela ahora, o se tomará la próxima vez que se abra la página.",
    "offline.update-failed": "Lista para trabajar sin cobertura. No se pudo guardar una versión más nueva, y se queda esta: {why}",
    "offline.update-taken": "Lista para trabajar sin cobertura. Se tomó una versión más nueva en otra ventana; esta sigue con la anterior hasta que se vuelva a cargar.",
    "offline.next_time": "Lista para trabajar sin cobertura. Llegó una versión más nueva; se tomará la próxima vez que se abra la página.",
    "offline.not_taken": "No se tomó la versión más nueva, porque no se pudo conservar lo escrito ({why}). Guarde antes el trabajo en un archivo.",
    "offline.nothing_kept": "este navegador no lo guarda",
    "offline.not_offered": "este navegador no lo ofrece",
    "offline.needs_https": "hace falta https",
    "offline.refused": "el navegador lo rechazó.",
    "offline.not_whole": "{path} no llegó entero.",
    # The page for a job: head
    "index.description": "De las lecturas del reloj a una campana centrada con el cigüeñal. Funciona sin cobertura.",
    "index.lead": "Una campana centrada con el cigüeñal. Vista desde atrás del motor, mirando hacia delante.",
    "index.starting": "Preparando el cálculo. Ya puede escribir.",
    "index.ready": "Listo.",
    "index.footer": "Para personas que conocen el oficio. Compruebe lo que dice con el manual del fabricante y con sus propios ojos. Nada de lo escrito sale de este teléfono, salvo en un enlace o archivo que usted entregue.",
    "cautions.name": "Precauciones",
    "html.cautions.first": "<b>Motor y vehículo sobre caballetes adecuados, batería desconectada, bujías fuera, cigüeñal girado a mano, dedos lejos.</b> Mandan los límites y los pares de apriete del fabricante.",
    "cautions.before": "Antes del barrido",
    "cautions.jack": "Nunca se ponga debajo con solo un gato. Avise a su ayudante antes de cada giro del cigüeñal. Gírelo como gira el motor; palanca en el tornillo del cigüeñal solo en el sentido de apriete.",
    "cautions.joint": "Caras de unión limpias y planas, nada que sobresalga, toda pieza que al final irá entre el bloque y la campana, tornillos apretados por igual.",
    "cautions.dial": "El reloj firme en su soporte, perpendicular al alojamiento, libre, sin llegar al final de su recorrido.",
    "cautions.face": "Haga también el barrido de la cara trasera, y corríjala primero: al escuadrar la cara se mueve el alojamiento.",
    "cautions.maker": "Primero va el procedimiento del fabricante; después, las normas locales y las personas cualificadas. Esta página va después de todos ellos.",
    # Jobs and files
    "job.heading": "Trabajo:",
    "job.unnamed": "Trabajo sin nombre",
    "job.name": "Nombre de este trabajo",
    "job.new": "Trabajo nuevo",
    "job.copy": "Copiar este trabajo",
    "job.delete": "Borrar este trabajo",
    "job.undo": "Recuperar el trabajo borrado",
    "job.others": "Otros trabajos en este teléfono",
    "job.copy_of": "{name}, copia",
    "job.kept": "Se guarda en este teléfono mientras escribe.",
    "job.kept_for_now": "Se guarda en este teléfono mientras escribe. El navegador puede borrarlo si la página no se usa durante mucho tiempo: póngala en la pantalla de inicio.",
    "job.not_kept": "NO SE GUARDA: este navegador no guarda lo que escribe ({why}). Anote las lecturas en papel.",
    "files.heading": "Archivos",
    "files.save": "Guardar este trabajo en un archivo",
    "files.csv": "Guardar las lecturas en CSV",
    "files.save_all": "Guardar todos los trabajos",
    "files.open": "Abrir un archivo (.json o .csv). Entra como un trabajo nuevo.",
    "files.working": "Un momento …",
    "files.saved": "{told} Archivo: {name}",
    "files.too_large": "Este archivo es mayor que cualquiera nuestro, y no se abrió.",
    "files.failed": "No funcionó: {why}",
    "ticked.count": "{n} de {of}",
    "about.heading": "Sobre este trabajo",
    "about.vehicle": "Vehículo",
    "about.engine": "Motor",
    "about.gearbox": "Caja de cambios",
    "about.housing": "Campana",
    "about.technician": "Técnico",
    "about.customer": "Cliente",
    "about.date": "Fecha",
    "about.notes": "Notas",
    "dial.heading": "Reloj y posiciones",
    "units.label": "Unidades",
    "units.inch": "milésimas, pulgadas",
    "units.metric": "mm",
    "contact.label": "El reloj, llevado por el cigüeñal, toca",
    "contact.inside": "el alojamiento, por dentro",
    "contact.outside": "un saliente redondo, por fuera",
    "field.indicator.plus_when": "Marca más cuando el vástago",
    "field.indicator.plus_when.plunger_in": "entra",
    "field.indicator.plus_when.plunger_out": "sale",
    "shows.label": "Sus números van",
    "shows.signed": "a ambos lados del cero",
    "shows.all_round": "en un sentido, toda la vuelta",
    "turn_of_dial.label": "Una vuelta entera de la aguja, {unit}",
    "turn_of_dial.help": (
        "Escriba lo que marca el reloj. Pasada media vuelta cuenta como menos: con una vuelta de "
        "100, 93,5 es −6,5. Lo que lleva signo vale tal como se escribe."
    ),
    "field.indicator.holder": "El reloj va en",
    "field.indicator.holder.none": "no se dice (cuenta hasta 3 milésimas o 0,08 mm de caída)",
    "field.indicator.holder.bracket": "un soporte corto, atornillado rígido (hasta 1 milésima o 0,03 mm)",
    "field.indicator.holder.short_arm": "una base magnética con un brazo corto (hasta 3 milésimas o 0,08 mm)",
    "field.indicator.holder.jointed_arm": "una base magnética con brazo articulado o flexible (hasta 5 milésimas o 0,13 mm)",
    "positions.label": "Posiciones",
    "positions.4": "4: cada cuarto de vuelta",
    "positions.6": "6: cada dos horas",
    "positions.8": "8: cada hora y media",
    "positions.12": "12: cada hora",
    "positions.own": "las mías",
    "turn.help": "Gírelo como gira el motor: hacia atrás puede aflojar el tornillo en que va la palanca, o desajustar el tensor de la correa o cadena.",
    "turn.label": "Visto desde atrás, el cigüeñal se gira",
    "turn.clockwise": "en sentido horario, de 12 a 3 (antihorario por delante): si el suyo gira así",
    "turn.anticlockwise": "en sentido antihorario, de 12 a 9 (horario por delante): como gira la mayoría",
    "positions.mine": "Mis posiciones, en el orden del barrido",
    "positions.help": "Posiciones de reloj como 3 o 10:30, o grados en sentido horario desde las 12 como 45°. Un espacio entre ellas.",
    "readings.heading": "Lecturas",
    "html.readings.help": "En <b>{unit}</b>, con más y menos tal como lo marca el reloj. Deje en blanco una posición a la que no se llega.",
    "readings.add_round": "Añadir una comprobación",
    "readings.clear": "Borrar las lecturas",
    "readings.example": "Cargar un ejemplo",
    "hand.title": "Teclas para la lectura",
    "hand.down": "Un paso del reloj hacia abajo",
    "hand.up": "Un paso del reloj hacia arriba",
    "hand.undo": "Deshacer",
    "hand.next": "Siguiente",
    "readings.sweep": "Barrido {n} en {what}",
    "readings.remove_sweep": "Quitar el barrido {n} en {what}",
    "readings.remove": "Quitar",
    "readings.reading": "{where}, {what}, barrido {n}",
    "readings.sign": "Más o menos: {where}",
    "readings.closing": "De vuelta al inicio",
    "readings.closing_help": "A cuánto queda el reloj cuando el cigüeñal está otra vez donde empezó el barrido: 0 si volvió.",
    "readings.second_dial": "Segundo reloj, opuesto",
    # Guía por un barrido
    "guide.lead": "Guiarme paso a paso",
    "guide.lead_sweep": "Guiarme paso a paso: barrido {n} en {what}",
    "guide.lost": "No se pudo traer la guía del barrido: {why}. El formulario funciona sin ella.",
    "guide.get_ready": "Preparar",
    "guide.begin": "Empezar",
    "guide.next": "Siguiente",
    "guide.previous": "Atrás",
    "guide.leave": "Volver al formulario",
    "guide.skip": "No se alcanza: dejar en blanco",
    "guide.again": "Otro barrido",
    "guide.done": "Barrido hecho",
    "guide.count": "{n} de {of}",
    "guide.reading": "Lectura",
    "guide.reading_opposite": "Segundo reloj",
    "guide.voice": "Decirlo en voz alta",
    "guide.voice_own": "La voz es la del propio navegador.",
    "guide.dark": "La pantalla puede apagarse: este navegador no la mantiene encendida.",
    "round.as_found": "Como se encontró",
    "round.recheck": "Comprobación {n}",
    "round.name": "Nombre de esta ronda",
    "round.name_first": "Esta ronda: su nombre; pasadores que ya estaban puestos; otro modo de barrer",
    "round.dowels": "Pasadores puestos ahora, {unit} de descentrado (0: normales)",
    "round.aim": "Orientados a, posición de reloj",
    "round.other": "El otro pasador",
    "round.alike": "es igual, con igual orientación",
    "round.unlike": "es distinto",
    "round.other_offset": "El otro pasador, {unit} de descentrado",
    "round.other_aim": "El otro pasador, orientado a",
    "round.more_bore": "Otro barrido del alojamiento",
    "round.more_face": "Otro barrido de la cara",
    "round.remove": "Quitar esta comprobación",
    "face.heading": "Barrido de la cara",
    "face.radius": "Radio barrido en la cara, {long_unit}",
    "plunger.label": "El vástago apunta",
    "plunger.forward": "hacia delante: toca la cara desde atrás",
    "plunger.rearward": "hacia atrás: la toca desde delante",
    "end_float.label": "Juego axial del cigüeñal",
    "end_float.free": "sin controlar",
    "end_float.held": "cigüeñal empujado hasta el tope hacia un lado, suelto",
    "end_float.second": "segundo reloj, opuesto al primero",
    "end_float.second_held": "segundo reloj, y cigüeñal empujado hacia un lado",
    "otherwise.bore": "Esta vez el alojamiento se barrió de otro modo",
    "otherwise.face": "Esta vez la cara se barrió de otro modo",
    "otherwise.heading_button": "Esta pieza se barrió de otro modo",
    "otherwise.heading": "Este barrido se hizo de otro modo",
    "otherwise.help": "En blanco: como se dijo para todos.",
    "otherwise.as_all": "como se dijo para todos",
    "otherwise.positions": "Sus posiciones, en el orden del barrido",
    "otherwise.contact": "Su reloj toca",
    "otherwise.radius": "Su radio en la cara, {long_unit}",
    "otherwise.plunger": "Su vástago apunta",
    "limit.heading": "Límite y pasadores",
    "field.limits.bore_offset": "Límite del alojamiento, {unit}",
    "limit.given_as": "¿La cifra de su manual es descentrado o TIR?",
    "limit.offset": "descentrado",
    "limit.tir": "TIR",
    "limit.both": "La TIR es el doble del descentrado.",
    "field.limits.source": "De dónde sale el límite",
    "field.limits.source.example": "manual, página",
    "field.limits.face_runout": "Límite de la cara, salto (TIR), {unit}",
    "field.stock.dowel_offsets": "Pasadores excéntricos en el cajón, descentrado de cada uno en {unit}",
    "result.heading": "Resultado",
    "result.waiting": "Escriba arriba las lecturas; la respuesta sale sola.",
    "result.one_wrong": "Una cosa de arriba todavía no está bien.",
    "result.wrong": "{n} cosas de arriba todavía no están bien.",
    "result.to_do": "Qué hacer",
    "result.aim": "Orientación: la posición de reloj, vista desde atrás, hacia la que la espiga excéntrica se aparta de su agujero en el bloque. La campana va hacia donde apuntan las espigas.",
    "result.choices": "Qué dejaría cada opción",
    "result.choice": "Opción",
    "result.left": "Queda, {unit}",
    "result.chance": "Dentro",
    "result.pilot": "En el piloto, {unit}",
    "result.doubts": "Qué está en duda",
    "result.explain": "¿Qué son estos valores?",
    "share.heading": "Mostrarlo al cliente",
    "share.help": "El trabajo entero viaja dentro del propio enlace; no se guarda nada en otro sitio. Quien tenga el enlace puede leerlo todo, también nombres y notas.",
    "share.send": "Enviar el enlace",
    "share.copy": "Copiar el enlace",
    "share.qr": "Mostrar un código QR",
    "share.print": "Imprimir la hoja",
    "share.link": "El enlace",
    "share.qr_name": "Código QR del enlace",
    "share.qr_help": "Apúntele con la cámara de un teléfono.",
    "share.title": "Qué se midió en su campana",
    "share.reach.network": "Esta página está en una dirección privada: el enlace se abre solo en esta red.",
    "share.reach.machine": "Esta página está en una dirección de esta sola máquina: el enlace se abre solo aquí.",
    "share.no_qr": "El enlace es demasiado largo para un código QR.",
    "share.copied": "El enlace está copiado.",
    "share.marked": "Este navegador no deja copiar a la página. El enlace está marcado: cópielo a mano.",
    "share.failed": "No funcionó: {why}",
    "print.none": "Todavía no hay respuesta, y por eso no hay hoja que imprimir. Escriba primero las lecturas.",
    "print.stale": "La hoja se estaba haciendo todavía. Espere dos segundos después del último cambio, e imprima otra vez.",
    "housing.heading": "Medidas de la campana y de la caja",
    "housing.help": "No se supone nada: lo que queda en blanco no se calcula.",
    "field.housing.pilot_distance": "De la cara trasera hacia delante hasta el rodamiento piloto, {long_unit}",
    "field.limits.pilot_offset": "Límite en el rodamiento piloto, descentrado, {unit}",
    "field.housing.pilot_bearing": "El rodamiento piloto es",
    "field.housing.pilot_bearing.none": "otra cosa, o no se sabe",
    "field.housing.depth": "Profundidad de la campana, de la brida delantera a la cara trasera, {long_unit}",
    "field.housing.plate_thickness": "Chapa entre el bloque y la campana, grosor, {long_unit}",
    "field.housing.tilt_from": "Qué lado inclina la cara",
    "field.housing.tilt_from.none": "no se sabe",
    "field.housing.tilt_from.front": "el lado del bloque: la campana está inclinada",
    "field.housing.tilt_from.rear": "la cara trasera: está mal cortada",
    "field.housing.tail_distance": "De la cara trasera hacia atrás hasta la cola de la caja, {long_unit}",
    "field.limits.face_radius": "El límite de la cara vale para un radio de, {long_unit}",
    "field.limits.face_radius.help": "En blanco: para el radio barrido. 1: por cada pulgada o milímetro de radio.",
    "housing.bolts_at": "Tornillos de la brida delantera, posiciones de reloj",
    "housing.bolts_radius": "Tornillos, distancia al eje del cigüeñal, {long_unit}",
    "housing.bolts_radius_help": "Una para todos, o una para cada uno en el mismo orden.",
    "field.housing.bolt_clearance": "Tornillos, holgura en sus agujeros, en diámetro, {unit}",
    "field.stock.shim_thicknesses": "Lainas disponibles, {unit}",
    "field.stock.shim_thicknesses.example": "1 2 5 10",
    "housing.holes_at": "Agujeros de los pasadores, posiciones de reloj",
    "housing.holes_radius": "Agujeros de los pasadores, distancia al eje del cigüeñal, {long_unit}",
    "field.housing.dowel_clearance": "Pasadores, holgura en la campana, en diámetro, {unit}",
    "field.stock.aim_for": "Los pasadores han de llevar al eje del cigüeñal",
    "field.stock.aim_for.bore": "el alojamiento",
    "field.stock.aim_for.pilot": "el eje de la caja en el rodamiento piloto",
    "field.housing.bore_diameter": "Diámetro del alojamiento, {long_unit}",
    "field.housing.register_diameter": "Diámetro del centrador de la caja que entra en él, {long_unit}",
    "in_joint.heading": "Qué haría una viruta en la junta",
    "in_joint.label": "La viruta está",
    "in_joint.front": "bajo la brida delantera",
    "in_joint.rear": "sobre la cara trasera",
    "in_joint.height": "Altura, {unit}",
    "in_joint.at": "A, posición de reloj",
    "in_joint.radius": "Distancia al eje del cigüeñal, {long_unit}",
    "turning.heading": "Piezas que giran con el cigüeñal",
    "turning.help": "El reloj está fijo en el bloque, y la pieza gira debajo. Una posición es la marca de la pieza que queda bajo el reloj.",
    "turning.pilot_bore": "Asiento del rodamiento piloto",
    "turning.crank_flange": "Brida del cigüeñal, por fuera",
    "turning.flywheel_face": "Cara del volante",
    "turning.limit": "Límite, TIR, {unit}",
    "more.heading": "Más sobre el reloj, el cigüeñal y los pasadores",
    "more.sag": "Prueba de caída: lectura abajo, {unit}",
    "more.sag_help": "El mismo alcance y las mismas mordazas que en el barrido, sobre una barra rígida a nivel. Ponga a cero con el reloj arriba. Gire la barra con todo, reloj abajo: lea, sin signo. Gire de vuelta: debe volver a cero. Hágalo tres veces y escriba las tres, separadas por un espacio. En blanco si no se midió.",
    "field.indicator.sag_allowance.help": "En blanco: lo que suele caer un soporte así. Práctica común, sin fuente.",
    "field.indicator.sag_allowance": "Si no se midió: lo más que puede ser, {unit}",
    "field.crank.axis": "El cigüeñal está",
    "field.crank.axis.horizontal": "horizontal, como en el vehículo",
    "field.crank.axis.vertical": "de pie, en un soporte",
    "field.crank.lift": "Levantamiento del cigüeñal en sus cojinetes, medido, {unit}",
    "field.indicator.contact_angle_deg": "Ángulo de contacto, grados",
    "field.indicator.contact_angle_deg.help": "Entre el vástago y la línea radial, o entre la palanca y la tangente.",
    "field.indicator.step": "División mínima que se lee en el reloj, {unit}",
    "field.indicator.accuracy": "Exactitud del reloj, más o menos, {unit}",
    "field.indicator.repeatability": "Dispersión de una lectura, {unit}",
    "field.indicator.repeatability.help": "Como desviación típica. Dos barridos o más lo dicen mejor.",
    "field.indicator.angle_setting_deg": "El cigüeñal está en su marca con un error de más o menos, grados",
    "field.limits.confidence": "Cuenta como dentro desde una probabilidad de",
    "field.stock.aim_setting_deg": "Un pasador se puede orientar con un error de más o menos, grados",
    # The practice housing
    "exercise.description": "Una campana para practicar: haga el barrido, monte pasadores, y vea la verdad junto a lo que encontró.",
    "exercise.heading": "Campana de práctica",
    "exercise.lead": "Inventada, con un error escondido. Haga el barrido, corríjala, y vea la verdad. Vista desde atrás del motor, mirando hacia delante.",
    "exercise.starting": "Preparando la campana.",
    "exercise.title": "Ejercicio",
    "exercise.number": "Número",
    "exercise.level": "Nivel",
    "exercise.level.1": "1 fácil",
    "exercise.level.2": "2 normal",
    "exercise.level.3": "3 completo",
    "exercise.new": "Ejercicio nuevo",
    "exercise.address": "La dirección de esta página nombra el ejercicio: pásela, y todos tendrán la misma campana.",
    "exercise.set_up": "Montaje: haga que el reloj se comporte como el suyo",
    "exercise.set_up_help": "Salvo las posiciones, un cambio aquí empieza el ejercicio de nuevo.",
    "exercise.plunger": "En la cara, el vástago apunta",
    "exercise.turn": "Girar el cigüeñal:",
    "exercise.part": "El reloj está",
    "exercise.part.bore": "en el alojamiento",
    "exercise.part.face": "en la cara",
    "exercise.crank": "Cigüeñal",
    "exercise.back": "Atrás, a la marca anterior",
    "exercise.on": "Adelante, a la marca siguiente",
    "exercise.to_mark": "Girar a una marca",
    "exercise.help": "Arrastre alrededor de la campana, o use el deslizador o las teclas. El reloj se puso a cero a las 12. Dé la vuelta entera: debe volver a donde empezó.",
    "html.exercise.readings": 'En <b>{unit}</b>. Lea el reloj y escriba, o pulse "Anotar".',
    "exercise.once_more": "Otro barrido",
    "exercise.droop": "Darle la vuelta en una barra rígida",
    "exercise.old_answer": "Esta es todavía la respuesta de antes de los pasadores. Repita el barrido del alojamiento.",
    "exercise.waiting": "Anote arriba las lecturas; la respuesta sale sola.",
    "exercise.fit": "Montar pasadores",
    "exercise.fit_help": "Los dos iguales. Orientación: la posición de reloj, vista desde atrás, hacia la que se apartan las espigas. Para el ajuste fino, monte los mismos con otra orientación.",
    "exercise.offset": "Descentrado, {unit}",
    "exercise.aim": "Orientados a",
    "exercise.fit_now": "Montarlos",
    "exercise.truth": "La verdad",
    "exercise.show_truth": "Mostrar la verdad",
    "exercise.footer": "Solo para practicar: una campana real puede estar mal de más maneras que esta. Aquí no se guarda ni se envía nada.",
    # The customer's view. It is read by a person who pays, not by one who knows the trade.
    "view.title": "Qué se midió",
    "view.heading": "Una campana, medida",
    "view.lead": "La campana entre el motor y la caja de cambios, y cómo está de centrada con el cigüeñal. Vista desde atrás del motor, mirando hacia delante.",
    "view.no_script": "Esta página necesita JavaScript para leer el enlace, y no lo encuentra.",
    "view.waits": "Este navegador no puede abrir el enlace por sí solo. Se lee en cuanto esté el cálculo …",
    "view.checking": "Todavía sin comprobar. Este teléfono lo está recalculando todo a partir de las lecturas; tarda un momento.",
    "view.agrees": "Este teléfono lo recalculó todo a partir de las lecturas: los valores coinciden.",
    "view.older": "Este enlace lo hizo una versión anterior, que calculaba la duda de otra manera. Abajo están los valores que muestra y los calculados ahora. Pida al taller un enlace nuevo.",
    "view.disagrees": "Los valores y las lecturas no coinciden.",
    "view.disagrees_more": "Al recalcular a partir de las lecturas de este enlace salen otros valores que los que muestra. El enlace se cambió, o lo hizo otra versión. No se fíe de él: pregunte a quien lo envió. Abajo están los dos.",
    "view.claimed": "Lo que muestra el enlace",
    "view.recomputed": "Lo que dan las lecturas",
    "view.unchecked": "Los valores de abajo no se comprobaron con las lecturas. {why}",
    "view.about.vehicle": "Vehículo",
    "view.about.engine": "Motor",
    "view.about.gearbox": "Caja de cambios",
    "view.about.housing": "Campana",
    "view.about.technician": "Hecho por",
    "view.about.customer": "Para",
    "view.about.date": "Fecha",
    "view.about.notes": "Notas",
    "view.found": "Qué se encontró",
    "view.done": "Qué se hizo",
    "view.ended": "Cómo quedó",
    "view.allowed": "Qué se permite",
    "view.drawn": "Dibujado",
    "view.before": "Como se encontró",
    "view.after": "Como se dejó",
    "view.doubts": "Lo que el registro dice de sí mismo",
    "view.readings": "Todas las lecturas",
    "view.bore": "El alojamiento estaba a {offset} {unit} del eje del cigüeñal (± {pm}), hacia {toward}. En el reloj son TIR {tir} {unit}.",
    "view.bore_nowhere": "El alojamiento estaba a {offset} {unit} del eje del cigüeñal (± {pm}). En el reloj son TIR {tir} {unit}.",
    "view.chance": "Probabilidad de que esté dentro del límite: {chance}.",
    "view.face": "Cara trasera: fuera de escuadra {face_runout} {unit} (± {face_pm}).",
    "view.face_limit": "Cara trasera: fuera de escuadra {face_runout} {unit} (± {face_pm}), límite {face_limit}.",
    "view.pilot": "En el rodamiento piloto el eje de la caja estaba desviado {pilot_offset} {unit} (± {pilot_pm}).",
    "view.judged": "{line} {verdict}.",
    "view.nothing_done": "No consta ninguna comprobación.",
    "view.standard": "Están puestos los pasadores normales. El registro no dice qué más se hizo.",
    "view.dowels": "Los dos pasadores con {offset} {unit} de descentrado, orientados a {aim}.",
    "view.dowels_differ": "Un pasador {one}; el otro {other}.",
    "view.dowel": "con {offset} {unit} de descentrado, orientado a {aim}",
    "view.dowel_standard": "normal",
    "view.round": "Medido otra vez, {n}",
    "view.limit": "El alojamiento puede desviarse {limit_offset} {unit} como máximo, que es TIR {limit_tir} {unit}.",
    "view.no_limit": "No se dio ningún límite para el alojamiento.",
    "view.pilot_limit": "En el rodamiento piloto puede ser {limit_pilot} {unit} como máximo.",
    "view.source": "Estos límites vienen de:",
    "view.no_source": "No se puso el origen de estos límites. Antes va el valor del fabricante.",
    "view.stops": "Sin terminar: el propio registro dice ALTO, algo queda abierto. Pregunte al taller.",
    "view.adopt": "Abrir como un trabajo propio",
    "view.opening": "Abriendo …",
    "view.not_opened": "No se pudo guardar en este teléfono: {why}",
    "view.print": "Imprimir",
    "view.meanings": "Qué significan las palabras",
    "view.term.housing": "Campana, alojamiento, cara",
    "html.view.means.housing": "La campana une la caja de cambios con el motor. La caja entra en el <i>alojamiento</i> redondo de su parte trasera y apoya en la <i>cara</i> plana que lo rodea.",
    "view.term.offset": "Descentrado",
    "view.means.offset": "A qué distancia está el centro del alojamiento de la línea sobre la que gira el cigüeñal. Una milésima es una milésima de pulgada, 0,0254 mm.",
    "view.term.tir": "TIR",
    "view.means.tir": "Lectura total del indicador: cuánto se movería en una vuelta entera un reloj sin caída. Es el doble del descentrado.",
    "view.means.pm": "La incertidumbre de las lecturas: 95 veces de 100 el valor verdadero no está más lejos que esto.",
    "view.term.undecided": "Demasiado justo para decidir",
    "view.means.undecided": "El valor está tan cerca del límite que estas lecturas no pueden decir de qué lado está.",
    "view.term.dowels": "Pasadores excéntricos",
    "view.means.dowels": "Los pasadores que sitúan la campana en el motor, hechos con un escalón para que la sujeten un poco hacia un lado.",
    "view.term.pilot": "Rodamiento piloto",
    "view.means.pilot": "El rodamiento en el extremo del cigüeñal que lleva la punta del eje de la caja.",
    "view.cautions": "Antes de fiarse",
    "view.caution.record": "Esto es un registro de lo que marcó un reloj, y no promete cuánto durarán las piezas. También hay otras cosas que desgastan las cajas de cambios.",
    "view.caution.limits": "Los límites del fabricante del vehículo o de la caja van antes que cualquier otro. Pregunte de dónde sale el límite que se nombra aquí.",
    "view.caution.stop": "Si después del trabajo cambia mal, arrastra o hace ruidos, deje de conducir y haga que lo revisen personas cualificadas.",
    "view.caution.yours": "Esta página puede mostrar que valores y lecturas van juntos. No puede mostrar que las lecturas se tomaron en su vehículo.",
    "view.footer": "Todo lo que hay aquí vino en el propio enlace. Al abrirlo no se guardó nada en este teléfono ni se envió nada a ningún sitio.",
    # How it is worked out
    "how.description": "Cómo calcula Sweepsheet lo que dice: referencia y signos, fórmulas, incertidumbre, decisión, límites y fuentes.",
    "how.lead": "De las lecturas a los pasadores, paso a paso. Lo que está bajo «En las palabras del propio programa, en inglés» se imprime del programa que hace las cuentas.",
    "how.contents": "Contenido",
    "how.own_words": "En las palabras del propio programa, en inglés:",
    "how.frame": "Desde dónde se mira",
    "how.frame.text": "Póngase detrás del motor y mire hacia delante, a la campana. Lo alto del motor son las 12, la derecha son las 3. Así se dice toda dirección en toda página. Confundir la vista de delante con la de atrás cambia izquierda por derecha, y entonces los pasadores lo empeoran.",
    "how.frame.plus": "Una lectura es más cuando el vástago entra. Un reloj que marca al revés se invierte una vez, antes de hacer nada más con él.",
    "how.positions": "Qué lecturas sirven",
    "how.positions.text": "Tres lugares alrededor del alojamiento fijan un círculo, si no están todos en un lado. Cuatro muestran un error. Ocho muestran en qué lectura está.",
    "how.corrections": "Antes del ajuste: lo que el reloj añade por su cuenta",
    "how.corrections.text": "Un soporte cuelga un poco. Hacia arriba cuelga lejos de la pared, hacia abajo contra ella, así que un alojamiento perfecto parece demasiado alto, nunca demasiado bajo. Medido, se descuenta. Sin medir, se descuenta la mitad de lo que un soporte así puede colgar, y el resto es duda. Un vástago inclinado marca de más. Un reloj que no vuelve a cero resbaló o se atascó en algún punto.",
    "how.fit": "La onda en las lecturas",
    "how.fit.text": "Gire un reloj en un alojamiento que está desviado hacia un lado: sube y baja una vez por vuelta. La altura de la onda dice cuánto está desviado el alojamiento, y dónde es más alta dice hacia dónde. Se usan todas las lecturas a la vez, por mínimos cuadrados, para que un pequeño error de una lo compensen las otras. De arriba a abajo la onda es el doble del descentrado: eso es la TIR.",
    "how.checks": "¿Cuadran las lecturas entre sí?",
    "how.checks.text": "En un alojamiento redondo, las lecturas opuestas suman lo mismo. Lo que la onda deja sin explicar muestra una lectura mala, una rebaba, un alojamiento que no es redondo, o algo que se mueve.",
    "how.doubt": "Qué valen las lecturas",
    "how.doubt.text": "Ningún reloj es perfecto, ningún cigüeñal está justo en su marca, y nadie lee entre rayas dos veces igual. Cada una de estas cosas tiene un tamaño, y juntas dicen cuánto puede fallar la respuesta: el más o menos. Un segundo barrido reduce la dispersión. No mejora en nada el propio reloj.",
    "how.decision": "Dentro, fuera, o demasiado justo para decidir",
    "how.decision.text": "Cinco milésimas con un límite de cinco, más o menos una, no es «dentro por poco». Es una moneda que todavía está en el aire. Por eso la página dice cuál es la probabilidad, y lo llama dentro solo desde 95 de cada 100.",
    "how.bore": "El alojamiento",
    "how.bore.text": "Dentro de un alojamiento el reloj entra más donde la pared está más cerca, así que la campana debe moverse hacia la lectura más alta, la mitad de la TIR.",
    "how.face": "La cara trasera",
    "how.face.text": "La caja apoya en esta cara. Si se inclina, la caja se inclina. Va antes que el alojamiento, porque al escuadrarla se desplaza el alojamiento.",
    "how.pilot": "En el rodamiento piloto",
    "how.pilot.text": "El eje primario sale de la caja, pasa por el alojamiento y entra en el rodamiento piloto. Donde su línea llega a ese rodamiento está lo que nota el eje: el descentrado del alojamiento, y la inclinación de la cara por la distancia.",
    "how.dowels": "Pasadores",
    "how.dowels.text": "Un pasador excéntrico se aparta hacia un lado en su agujero. Dos iguales, con igual orientación, llevan la campana hacia ahí lo que mide su descentrado. Se elige la medida que deja la mejor probabilidad, y nunca para arreglar lo que ya está dentro. Si de ninguna del cajón se espera que lo meta dentro, se dice qué medida hace falta.",
    "how.trim": "Después de la comprobación",
    "how.trim.text": "Los pasadores rara vez hacen justo lo que llevan marcado. Una vez vistos en su trabajo, cuenta lo que hicieron, hasta donde las lecturas pueden distinguirlo del ruido.",
    "how.advice": "Qué hacer, y en qué orden",
    "how.advice.text": "No se hace nada según una lectura que no puede ser. La cara va antes que el alojamiento. No se mecaniza ni se ponen lainas por una inclinación vista una sola vez, o con juego axial en ella: primero se limpia la junta, se repite el barrido y se averigua qué lado está mal. Un alojamiento que está dentro se aprieta para siempre y se barre otra vez: dos barridos seguidos terminan el trabajo.",
    "how.companions": "Lo que gira con el cigüeñal",
    "how.companions.text": "Un asiento de rodamiento piloto o un volante con salto gira con el cigüeñal. Ningún pasador cura eso: el error está al otro lado de la junta.",
    "how.practice": "La campana de práctica",
    "how.practice.text": "La campana de la página de práctica está hecha al revés: cuerpos en el espacio, y la distancia del reloj a ellos. Para hacerla no se usa ninguna de las fórmulas de arriba, de modo que puede mostrar si son correctas.",
    "how.limits": "Lo que no puede ver",
    "how.limits.face": "Una cara fuera de escuadra, si solo se hizo el barrido del alojamiento.",
    "how.limits.flange": (
        "Un soporte flojo o que cede: todo el barrido está entonces mal por igual. Una brida "
        "del cigüeñal torcida no hace daño: el reloj gira alrededor de los cojinetes de "
        "bancada."
    ),
    "how.limits.dial": "Un reloj que se atasca en el mismo lugar en cada vuelta.",
    "how.limits.housing": "Una campana que se dobla al atornillar la caja, o al calentarse.",
    "how.limits.gearbox": "Cómo está hecha la propia caja: se supone que su eje gira centrado con su centrador y a escuadra con su cara delantera.",
    "how.limits.view": "Un error en hacia dónde se mira. El dibujo dice dónde están las 3 y las 9: mire la campana y compare.",
    "how.limits.text": "Primero van los límites, los pares de apriete y el procedimiento del fabricante; después, las normas locales y las personas cualificadas. Decide la comprobación con el reloj, no un valor en una pantalla.",
    "how.sources": "Fuentes",
    "how.sources.gum": "Guía para la expresión de la incertidumbre de medida (GUM).",
    "how.sources.gum2": "lo mismo para varias magnitudes a la vez.",
    "how.sources.decision": "el papel de la incertidumbre de medida al decidir sobre la conformidad.",
    "how.sources.rules": "reglas de decisión para probar la conformidad con un límite.",
    "how.sources.roundness": "medir la redondez; el centro por mínimos cuadrados.",
    "how.sources.worksheet": "manual técnico del ejército de los EE. UU., una hoja de trabajo para el barrido de una campana.",
    "how.sources.opposite": "Shaft Alignment Handbook (manual de alineación de ejes); la regla de las lecturas opuestas.",
    "how.sources.means": "quitar las medias antes de un ajuste no cambia nada.",
    "how.sources.none": "Donde no se nombra fuente, es geometría, o práctica común y marcada como tal.",
    # The page's own description, for the home screen
    "manifest.description": "De los barridos con reloj comparador a una campana que gira centrada con el cigüeñal.",
}

SPANISH = Language("es", TABLE)
