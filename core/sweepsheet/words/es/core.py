"""Spanish: the same sentences under the same keys as in English.

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
    "fault.marks": "Número de marcas: un entero de {low} a {high}, no {got}",
    "mark.plain": "{at}",
    "mark.bolt": "tornillo {n}: {at}",
    "mark.wheel": "{turned}: {at}",
    "fault.whole": "{name}: se pide un número entero",
    "fault.aim": "Se pide una orientación, como 10:30 o 315°",
    # Names of fields
    "name.job": "el trabajo",
    "name.units": "unidades",
    "name.about.vehicle": "vehículo",
    "name.about.engine": "motor",
    "name.about.gearbox": "caja de cambios",
    "name.about.housing": "campana",
    "name.about.shop": "taller",
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
    "checklist.fit": "Cómo montar los pasadores",
    "checklist.dowels_out": "Pasadores viejos fuera: con agarre, o golpeados desde el otro lado.",
    "checklist.holes_clean": "Agujeros de pasadores limpios, sin rebaba.",
    "checklist.sides_marked": "Lado alto marcado en la cara de cada extremo.",
    "checklist.dowels_aimed": "A presión, cada marca en su orientación, vista desde atrás.",
    "checklist.housing_on": "Campana puesta a mano, no traída con los tornillos.",
    "checklist.fit_torqued": "Tornillos apretados en cruz, como antes.",
    "checklist.dowels_engage": "Los pasadores entran lo suficiente en la campana.",
    "checklist.bolts_start": "Cada tornillo entra a mano.",
    "checklist.trim": "Cómo girar los pasadores",
    "checklist.bolts_loose": "Tornillos de la campana flojos.",
    "checklist.dowels_turned": "Los dos pasadores girados hacia el mismo lado, el mismo ángulo.",
    "checklist.trim_torqued": "Tornillos apretados en cruz otra vez, como antes.",
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
    "glance.not_entered": "Sin anotar: {names}",
    "why.clean-joint": "Suciedad o una rebaba en la junta inclina la cara. Por suciedad no se corta metal.",
    "why.check-sense": "Un signo errado o una vista en espejo pone el corte del lado errado.",
    "why.start-anew": "Calces y cortes mueven también el alojamiento. Las lecturas viejas ya no cuentan.",
    "why.leave": "Está dentro. Otro cambio arriesga más de lo que gana.",
    "why.tighten-and-sweep": "El par puede mover la campana. Dos barridos seguidos deben coincidir.",
    "why.move": "El descentrado es la mitad del TIR. La campana va hacia el otro lado.",
    "why.reseat": "Suciedad en la junta se lee como descentrado, y ningún pasador la cura.",
    "why.fit-dowels": "La campana se mueve lo que dice el pasador, hacia los lados altos.",
    "why.trim": "Girar los dos pasadores gira el rumbo en que se movió la campana.",
    "why.recheck": "Agujeros y par deciden. Anote la orientación montada, no la planeada.",
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
    "dowel_view.title": "Los dos pasadores vistos de frente, con la marca de cada lado alto",
    "dowel_view.both": "Las dos marcas apuntan a {aim}.",
    "dowel_view.turned": "Las dos marcas giran: de {now} a {aim}.",
    "dowel_view.each": "En su orden: {marks}.",
    "dowel_view.mark": "marca a {aim}",
    "dowel_view.stock": "normal: sin marca",
    "dowel_view.hole": "agujero: {hole}",
    "dowel_view.view": "visto desde atrás del motor",
    "dowel_view.step": "a trazos: en el bloque; excentricidad ampliada",
    "dowel_view.now": "línea fina: marca ahora, {now}",
    "wave.title": "Las lecturas alrededor del reloj y la onda ajustada",
    "wave.desc": "Ninguna lectura está a más de {rest} de la onda.",
    "wave.reading": "lectura corregida",
    "wave.fitted": "onda ajustada",
    "wave.foreign": "parece errónea",
    "wave.differ": "aquí difieren",
    "wave.rest": "lo más lejos de la onda: {rest}",
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

SPANISH = Language("es", TABLE)
