import type { Caution, CautionAct } from '../shape/caution.ts';

const line = (code: string, sentence: string): Caution => ({ code, sentence, essential: false });
const essential = (code: string, sentence: string): Caution => ({
  code,
  sentence,
  essential: true,
});

const always: readonly Caution[] = [
  // safety rule of this tool
  essential(
    'defer',
    'These lines do not replace the maker’s manual, your local rules or a laser safety officer: those come first.',
  ),
  // Univ. of the Arts London, Creative Computing Institute wiki; AIHA accident report: both seen
  essential('lid-shut', 'Run only with lid and covers shut. Never defeat an interlock.'),
  // Univ. of California laser manual, seen: fume is not normally managed with personal protective equipment
  essential(
    'extraction-on',
    'Extraction on before the first cut: outdoors, or through a suitable, maintained filter. Do not count on a mask.',
  ),
  // AUVA laser-class page, seen; class 4 above 0.5 W: Patty's Industrial Hygiene, seen
  line(
    'beam-invisible',
    'The beam is invisible (10.6 µm) and class 4. Direct or scattered, it can burn eyes and skin and start fires.',
  ),
  // laser-safety textbook passage, seen; use as told by a laser safety officer
  line(
    'eyewear',
    'If eyewear is called for, it must be marked for 10 600 nm with its optical density. Ordinary glasses are not enough.',
  ),
  // UVA FabLab, seen; Munoz et al. 2023, abstract seen: particles leave at each lid opening and rise for 20 min or more
  line('let-fume-clear', 'Keep the lid shut for a while after the cut, so that the fume clears.'),
  // NFPA 115 via Univ. of California manual, seen; scraps: common practice, no source
  line('bed-clean', 'Keep the bed free of scraps and dust, and keep solvents away.'),
  // Univ. of Massachusetts Amherst EH&S laser cutter procedure, seen
  line('trained-only', 'Only trained people run the machine.'),
];

const unattended: readonly Caution[] = [
  // Univ. of the Arts London, seen; Iowa State Univ. College of Design, seen; a phone is no supervision: this tool's rule
  essential(
    'never-leave',
    'Never leave the machine while it runs, not even for a moment. A phone or a camera is not supervision.',
  ),
  // Carnegie Mellon Univ., seen: awake and attentive
  line('watch-the-cut', 'Stay awake and watch the cut. Phone away while the beam is on.'),
];

const fire: readonly Caution[] = [
  // Iowa State Univ., seen, for CO2 first and a back-up; powder remark and blanket: common practice, no source
  essential(
    'extinguisher',
    'A CO2 extinguisher and a fire blanket within reach, and know how to use them. Powder works too, but ruins optics.',
  ),
  // UVA FabLab, seen; Iowa State Univ. shuts the exhaust off, seen
  essential(
    'flame-stays',
    'A flame that follows the cut and dies at once is common. If it stays: stop the beam, lid shut, extinguisher ready, extraction as your local plan says; leave and raise the alarm if it grows.',
  ),
  // Iowa State Univ., seen
  line(
    'after-a-fire',
    'After a fire of any size, do not use the machine until it has been checked.',
  ),
  // common practice, no source
  line('embers', 'Let pieces cool before the bin: embers in wood edges can smoulder.'),
];

const card: readonly Caution[] = [
  // common practice, no source
  line(
    'slow-cells-burn',
    'The slow, strong shapes burn most. Put them where you can see them, and watch them.',
  ),
  // common practice, no source
  essential('clips-clear', 'Clips clear of the path. Dry run round the outline first, beam off.'),
  // common practice, no source
  line('pieces-tip', 'Small cut pieces can tip up into the head. Stay ready to stop it.'),
];

const beforeCut: readonly Caution[] = [
  // common practice, no source
  essential(
    'water-air-stop',
    'Before the cut: cooling water flowing and within the range in the maker’s manual, air on unless the setting says off, and you know where the emergency stop is and can reach it.',
  ),
];

const injury: readonly Caution[] = [
  // from memory; first aid by local rules
  essential(
    'after-a-hit',
    'If the beam hits an eye or skin: stop the machine, call the emergency number that your local rules name, and have an eye seen by a doctor at once, even without pain. Cool a burn with running water. Do not use the machine until it has been checked.',
  ),
];

const airOff: readonly Caution[] = [
  // common practice, no source
  essential(
    'air-off-burns',
    'Air off: flames stand and soot fouls the lens. Cut so only where your local rules allow it, small pieces, someone watching every second, extinguisher in hand.',
  ),
];

const slowThick: readonly Caution[] = [
  // common practice, no source
  essential(
    'slow-through-thick',
    'Very slow through thick sheet: the cut glows on and can catch fire inside and below, also after the beam is off. Watch it from below too, keep the lid shut, and look at it again after some minutes.',
  ),
];

const newMaterial: readonly Caution[] = [
  // Univ. of Texas at Austin, seen
  essential(
    'unknown-plastic',
    'Unknown plastic is not cut. Find the data sheet first: some sheet that looks like acrylic is PVC.',
  ),
  // the list of refused materials with its sources: words/en/judgedMaterials.ts
  line(
    'refused-kinds',
    'Not cut here: PVC and vinyl, fluoropolymers, ABS, polycarbonate, foams, fibreglass, carbon fibre, treated wood.',
  ),
  // OSHA 29 CFR 1910.1048; NIOSH Pocket Guide npgd0294: both seen
  line(
    'formaldehyde',
    'MDF and plywood give off formaldehyde. Limits are low: OSHA 0.75 ppm over 8 hours, 2 ppm for 15 minutes; NIOSH 0.016 ppm. If eyes or nose sting, stop and mend the extraction.',
  ),
  // common practice, no source
  line(
    'first-test-small',
    'First test of a new material: a small card, extinguisher at hand, a second person near.',
  ),
];

const current: readonly Caution[] = [
  // AIHA accident report, seen
  essential(
    'tube-supply-kills',
    'Danger of death. The tube supply makes many kilovolts and holds charge after it is switched off. A worker who touched about 17 000 V of one lost pulse and breathing; interlocks had been defeated.',
  ),
  // common practice, no source
  essential(
    'panel-meter-first',
    'Use the meter in the panel if there is one. Nothing here ever needs you to open the machine.',
  ),
  // Stanford EH&S, seen, for electrical-safety and lock-out training; local code: common practice, no source
  essential(
    'competent-person',
    'Fitting a meter is for a competent person trained for high voltage, by the local code; mains wiring for a licensed electrician.',
  ),
  // Int. Laser Safety Conf. 2013 abstract, seen
  line('shock-leads', 'Electric shock remains the leading cause of death from work with lasers.'),
  // common practice, no source
  line(
    'return-lead-only',
    'A meter goes in the cathode (return, low-voltage) lead only, fitted with the power off, fixed in place, terminals covered. Never on the anode side.',
  ),
  // common practice, no source; follows from circuit theory
  line(
    'open-return',
    'A loose or open return lead rises to full voltage. Check the joint before power.',
  ),
  // Stanford EH&S, seen, for disconnect and lock-out; Univ. of California manual, seen, for bleeding capacitors; waiting:
  // common practice, no source
  line(
    'isolate-and-discharge',
    'Power off, unplug, lock out, wait, and discharge by the maker’s method: supply and tube can hold charge.',
  ),
  // AIHA, seen: do not work around energised exposed conductors
  line(
    'covers-before-firing',
    'Covers back on and lid shut before firing. Read the meter from outside. Never reach in while it is powered.',
  ),
  // Stanford EH&S, seen: at least two persons
  line('second-person', 'A second person present who can cut the power.'),
  // Stanford EH&S, seen; the AIHA case began with condensation
  line(
    'water-and-voltage',
    'Keep coolant joints away from high voltage. No work with leaks or condensation.',
  ),
  // common practice, no source
  line('within-rating', 'Do not go above the tube’s rated current.'),
];

const focus: readonly Caution[] = [
  // common practice, no source
  essential('measure-stopped', 'Measure heights with the machine stopped and the beam disabled.'),
  // common practice, no source
  essential(
    'ramp-clears-head',
    'Use approved flat stock. A ramp must clear the head over its whole travel: start at the low end, dry run first, beam off.',
  ),
  // Univ. of Massachusetts Amherst EH&S, seen
  line(
    'not-along-the-beam',
    'Do not look along the beam path, and do not align mirrors as part of this test: that is for trained persons.',
  ),
  // common practice, no source
  line('low-power-first', 'Low power first. No shiny metal under the beam.'),
];

const airComparison: readonly Caution[] = [
  // common practice, no source
  essential(
    'low-not-off',
    'In wood, compare low air with high air. Air off lets flames stand and soots the lens: only small shapes, and someone watching every second, extinguisher in hand.',
  ),
];

const photo: readonly Caution[] = [
  // basis: Munoz et al. 2023, abstract seen, and UVA FabLab, seen
  essential(
    'photo-after',
    'Take the photo after the run, when extraction has cleared the box, the card is cool and the beam is disarmed.',
  ),
  // AIHA accident report and Univ. of the Arts London, seen (interlocks)
  line('no-photo-of-running-cut', 'Do not defeat the lid or lean in to photograph a running cut.'),
  // common practice, no source
  line(
    'sharp-and-hot',
    'Machine stopped, head clear. Pieces are sharp and may be hot. Do not shake them out over the optics.',
  ),
  // common practice, no source
  line('photo-may-be-wrong', 'Reading by photo may be wrong. Check by hand which pieces fell out.'),
];

const timedJobs: readonly Caution[] = [
  // safety rule of this tool: timed jobs run with the beam disarmed
  essential(
    'beam-disarmed',
    'Disarm the beam as the maker’s manual says, and see that it is off, before a job is run for its time. Do not only set the power to 0 %: some tubes fire at 0.',
  ),
  // common practice, no source
  essential(
    'head-runs-free',
    'Lid shut, bed empty, clips off. The head moves fast over the whole bed: stay beside it, a hand at the emergency stop.',
  ),
  // common practice, no source
  line(
    'arm-it-again',
    'The beam is still a beam when it is armed again: treat the machine as live.',
  ),
];

const marking: readonly Caution[] = [
  // fume drawn off at the source: Univ. of California laser manual, seen; that a filling makes more of it: common practice, no source
  essential(
    'filling-fumes',
    'A filled face gives off more fume and fine dust than a cut, and for longer. Extraction on all the while, and let it run on before the lid is opened. If eyes or nose sting, stop.',
  ),
  // wood dust: NIOSH REL 1 mg/m3, from memory; wiping: common practice, no source
  essential(
    'dust-wiped',
    'Engraved wood leaves fine dust and soot. Wipe it off damp or draw it off with a vacuum cleaner made for fine dust; do not blow it about.',
  ),
  // common practice, no source; vinyl is refused: words/en/judgedMaterials.ts
  essential(
    'tape-known',
    'Mask with plain paper tape, or with film that is known not to be vinyl (PVC): that gives off hydrogen chloride. Tape can catch fire; peel it when all is cool.',
  ),
  // common practice, no source
  line(
    'close-lines-burn',
    'Close lines, slow, on thin sheet can burn through or set it alight: stay with it, as with a cut.',
  ),
];

/** The cautions in English, by act. What each rests on stands above it; "seen" means that the page was read. */
export const allCautions: Readonly<Record<CautionAct, readonly Caution[]>> = {
  always,
  unattended,
  fire,
  card,
  beforeCut,
  injury,
  airOff,
  slowThick,
  newMaterial,
  current,
  focus,
  airComparison,
  photo,
  timedJobs,
  marking,
};
