import type { FilecheckCode } from '../../core/problems/filecheck.ts';
import type { DrawingCode } from '../../core/problems/drawings.ts';
import type { Sentences } from '../shape/sentence.ts';

const place = (p: { readonly where: string }): string => `(line ${p.where})`;
const cellOr = ({ cell }: { readonly cell?: string }, other: string): string =>
  cell === undefined ? other : `Shape ${cell}`;

/** What the check of a file found. `where` is a line of a program, or the place of a line in a drawing. */
export const filecheckWords = {
  'check-nothing-cut': {
    message: () => 'The file cuts nothing that can be read.',
    remedy: () => 'Turn text, splines and copies into plain lines and save it again.',
  },
  'check-beam-never-on': {
    message: () => 'The program never lights the beam: it is there to be timed, and says so.',
    remedy: () => 'Disarm the beam all the same, and stay with the machine.',
  },
  'check-beam-not-disarmed': {
    message: (p) => `The program says that the beam is disarmed, but lights it ${place(p)}.`,
    remedy: () => 'Do not run it. Write the job to be timed anew.',
  },
  'check-not-this-card': {
    message: (p) => `Not one shape of card ${p.card} is in this file.`,
    remedy: () => 'Check that file and card belong together, and that the file is in mm.',
  },
  'check-cell-missing': {
    message: (p) => `Shape ${p.cell} is not cut.`,
    remedy: () => 'Take the file that was written with the card, or write it anew.',
  },
  'check-cell-differs': {
    message: (p) =>
      `Shape ${p.cell} says ${p.card}, but the file cuts it at ${p.file} ${place(p)}.`,
    remedy: () =>
      'Do not cut it: the words beside the shape would be wrong. Write the file anew from the card.',
  },
  'check-cell-mixed': {
    message: (p) => `Shape ${p.cell} is cut partly at ${p.one}, partly at ${p.other}.`,
    remedy: () => 'Such a shape teaches nothing. Write the file anew from the card.',
  },
  'check-cell-partly': {
    message: (p) => `Of the outline of shape ${p.cell}, ${p.pct} % is cut.`,
    remedy: () =>
      'A shape that is cut in part, or in part twice, teaches nothing. Write the file anew from the card.',
  },
  'check-cell-beam-mode': {
    message: (p) =>
      `Shape ${p.cell} is cut with ${p.mode}, the others with ${p.others} ${place(p)}.`,
    remedy: () =>
      'M4 lowers the power as the head slows, M3 does not: the shape gets another power in its corners than its words say. Use one of the two throughout.',
  },
  'check-spelt-differs': {
    message: (p) =>
      `Shape ${p.cell} of the card says ${p.card}; the program calls it “${p.label}” ${place(p)}.`,
    remedy: () =>
      'Whoever reads the program believes another setting. Write it anew from the card.',
  },
  'check-label-differs': {
    message: (p) =>
      `${cellOr(p, 'A part')} is called “${p.label}”, but is cut at ${p.file} ${place(p)}.`,
    remedy: () => 'Trust neither. Write the file anew from what it was made of.',
  },
  'check-words-differ': {
    message: (p) => `The words drawn beside shape ${p.cell} are not “${p.words}”.`,
    remedy: () => 'Write the file anew: cut like this, the card would be read wrongly.',
  },
  'check-words-missing': {
    message: (p) => `The file draws no words beside the shapes of card ${p.card}.`,
    remedy: () => 'Without them the card can be read only with this file at hand.',
  },
  'check-part-missing': {
    message: (p) => `The file lacks a part of the card: ${p.part}.`,
    remedy: () => 'Without it the card is harder to tell or to read. Write the file anew.',
  },
  'check-line-unknown': {
    message: (p) => `${p.count} lines are cut that the card does not have ${place(p)}.`,
    remedy: () => 'Find out what they are before cutting, or write the file anew.',
  },
  'check-marks-late': {
    message: (p) => `A mark is drawn after the first shape ${place(p)}.`,
    remedy: () => 'Words and marks come first: a sheet with holes may have moved.',
  },
  'check-outline-early': {
    message: (p) => `The outline is cut before shape ${p.cell} ${place(p)}.`,
    remedy: () => 'Outline last: a freed card drops or tilts and spoils the shapes after it.',
  },
  'check-window-early': {
    message: (p) => `The window is cut before shape ${p.cell} ${place(p)}.`,
    remedy: () => 'Window and outline last: a freed piece tips up and spoils what comes after it.',
  },
  'check-inside-after-outside': {
    message: (p) =>
      `Something inside is cut (line ${p.inside}) after the line around it (line ${p.outside}).`,
    remedy: () => 'Cut inside first, outline last: a freed part drops or tilts.',
  },
  'check-order-differs': {
    message: (p) => `Shape ${p.cell} is cut where ${p.wanted} should be.`,
    remedy: () =>
      'Turn off re-ordering. The order was drawn at random so that a warm-up does not pose as a setting.',
  },
  'check-outside-bed': {
    message: (p) =>
      `The file reaches from ${p.left}, ${p.bottom} to ${p.right}, ${p.top} mm; the bed is ${p.widthMm} × ${p.heightMm} mm.`,
    remedy: () => 'Move or scale it, or check units and zero.',
  },
  'check-outside-page': {
    message: (p) =>
      `Lines reach from ${p.left}, ${p.bottom} to ${p.right}, ${p.top} mm, beyond the drawing’s own ${p.widthMm} × ${p.heightMm} mm.`,
    remedy: () =>
      'Some control programs cut such lines off, others shift everything. Mend the drawing.',
  },
  'check-power-above-machine': {
    message: (p) =>
      `${cellOr(p, 'A line')} asks for ${p.powerPct} %; the machine is kept to ${p.most} % ${place(p)}.`,
    remedy: (p) => `Lower it to ${p.most} % or less.`,
  },
  'check-overdrives': {
    message: (p) =>
      `${cellOr(p, 'A line')} asks for ${p.powerPct} %: above rated current, which is reached at ${p.ratedPct} % ${place(p)}.`,
    remedy: () => 'Overdrive shortens the tube’s life. Lower the power and go slower.',
  },
  'check-speed-beyond-machine': {
    message: (p) =>
      `${cellOr(p, 'A line')} asks for ${p.speedMmPerS} mm/s; the machine does ${p.least} to ${p.most} mm/s ${place(p)}.`,
    remedy: () => 'Change the speed, or check the unit: mm/s or mm/min?',
  },
  'check-above-energy-ceiling': {
    message: (p) =>
      `${cellOr(p, 'A line')} has ${p.times} times the line energy at which the sheet was believed to come through ${place(p)}.`,
    remedy: () => 'It would burn rather than teach. Cut it faster.',
  },
  'check-marks-would-cut': {
    message: (p) =>
      `Marks have ${p.sharePct} % of the line energy ${p.of === 'changeover' ? 'at which the sheet is believed to come through' : 'of the gentlest shape'}: they may cut through ${place(p)}.`,
    remedy: () => 'Score with a setting that you have tried on scrap of this sheet.',
  },
  'check-marks-differ': {
    message: (p) => `The ${p.part} should be at ${p.card}, but the file has ${p.file} ${place(p)}.`,
    remedy: () => 'Write the file anew from the card.',
  },
  'check-colour-shared': {
    message: (p) => `“${p.one}” and “${p.other}” have the same colour, ${p.colour}.`,
    remedy: () =>
      'A control program that goes by colour gives both one setting. Give each its own.',
  },
  'check-colour-differs': {
    message: (p) => `Shape ${p.cell} is drawn in ${p.colour}; the type-in list has ${p.listed}.`,
    remedy: () =>
      'Whoever types by colour types another setting. Write the file anew from the card.',
  },
  'check-layer-unnamed': {
    message: (p) => `Layer “${p.layer}” does not say with what it is cut.`,
    remedy: () => 'Nothing can be said of its setting. Look at it in the control program.',
  },
  'check-names-lost': {
    message: () => 'The layers have lost their names; only the colours say which setting is meant.',
    remedy: () => 'Type by the colours of the type-in list, and look twice.',
  },
  'check-layer-differs': {
    message: (p) => `One layer is called “${p.one}” and “${p.other}” at once.`,
    remedy: () => 'Control programs show one or the other. Write the file anew.',
  },
  'check-power-scale-unknown': {
    message: () => 'The program does not say what S means full power, so powers were not checked.',
    remedy: () =>
      'Say the S value at full power: on the command line it is sAtFullPower in the machine file.',
  },
  'check-power-scale-inferred': {
    message: (p) =>
      `The program does not say what S means full power. By the card it is S${p.full}: powers were checked against each other only.`,
    remedy: () =>
      'Check the scale of S in the machine’s settings, or say it: on the command line it is sAtFullPower in the machine file.',
  },
  'check-power-above-scale': {
    message: (p) =>
      `${cellOr(p, 'A line')} asks for S${p.s}, above S${p.full}, which is 100 % ${place(p)}.`,
    remedy: () => 'Check the scale of S in the machine’s settings.',
  },
  'check-power-hardly-any': {
    message: (p) =>
      `The strongest beam is S${p.s}, hardly any of S${p.full}, which is 100 % ${place(p)}.`,
    remedy: () => 'Check the scale of S: the program may count to another full power.',
  },
  'check-beam-on-in-travel': {
    message: (p) => `The beam is on during a rapid move in line ${p.where}.`,
    remedy: () => 'Many controllers burn a line there. Put M5 or S0 before it.',
  },
  'check-beam-left-on': {
    message: () => 'The program ends with the beam on.',
    remedy: () => 'End it with M5.',
  },
  'check-beam-on-standing': {
    message: (p) => `The beam is on while the head waits ${p.seconds} s in line ${p.where}.`,
    remedy: () => 'Put M5 or S0 before the pause.',
  },
  'check-units-unsaid': {
    message: () => 'The program does not say whether it is in mm or inches.',
    remedy: () => 'It was read in mm. Begin it with G21 or G20.',
  },
  'check-distance-unsaid': {
    message: () => 'The program does not say whether positions are absolute or steps.',
    remedy: () => 'It was read as absolute. Begin it with G90 or G91.',
  },
  'check-left-relative': {
    message: () => 'The program leaves the machine in steps (G91).',
    remedy: () => 'The next program may run off. End it with G90.',
  },
  'check-left-inches': {
    message: () => 'The program leaves the machine in inches (G20).',
    remedy: () => 'The next program may be 25 times too big. End it with G21.',
  },
  'check-offset-in-force': {
    message: () => 'The program leaves the zero moved (G92).',
    remedy: () => 'End it with G92.1.',
  },
  'check-zero-moved': {
    message: (p) =>
      p.count === '1'
        ? `The program sets or chooses another zero: ${p.word} in line ${p.where}.`
        : `The program sets or chooses another zero ${p.count} times, first with ${p.word} in line ${p.where}.`,
    remedy: () =>
      'Where it cuts depends on what the machine keeps and where the head stands: run once round it with the beam off before cutting.',
  },
  'check-units-mixed': {
    message: (p) => `The program changes between mm and inches on its way ${place(p)}.`,
    remedy: () => 'Check sizes and speeds from that line on: one of the two may be a slip.',
  },
  'check-beam-modes-mixed': {
    message: (p) =>
      `The program cuts with steady power (M3) and with power that follows speed (M4), first changed ${place(p)}.`,
    remedy: () =>
      'The same S burns differently in corners and short pieces. Use one of the two throughout.',
  },
  'check-setting-inherited': {
    message: (p) =>
      `${cellOr(p, 'A section')} takes over speed or power from what comes before it ${place(p)}.`,
    remedy: () => 'Whoever moves or deletes lines changes its setting. Give it F and S of its own.',
  },
  'check-words-passed-over': {
    message: (p) =>
      `${p.count} words of the program were passed over, the first ${p.word} in line ${p.where}.`,
    remedy: () => 'What they do on your machine is in its manual.',
  },
  'check-program-unended': {
    message: () => 'The program has no end (M2 or M30).',
    remedy: () => 'Perhaps it was cut short. Compare its last lines with the original.',
  },
  'check-corner-power-not-carried': {
    message: (p) =>
      `${p.rung} has a corner power of its own, which G-code cannot carry: the program cuts it with one power throughout.`,
    remedy: () =>
      'Do not cut it: the words beside the shapes would be wrong. Take the SVG or DXF and type the powers in.',
  },
  'check-part-not-read': {
    message: (p) => `Not read: ${p.count} × ${p.what}.`,
    remedy: () => 'Turn it into plain lines, or look at it in the control program.',
  },
  'check-text-not-lines': {
    message: (p) =>
      p.count === '1'
        ? `Text that is still text: “${p.words}” at ${p.xMm}, ${p.yMm} mm.`
        : `${p.count} texts are still text, the first “${p.words}” at ${p.xMm}, ${p.yMm} mm.`,
    remedy: () =>
      'Turn text into outlines first: how it looks depends on the typeface of each computer, and nothing of it was read.',
  },
  'check-unseen-cut': {
    message: (p) =>
      `${p.count} lines cannot be seen in the drawing (opacity 0, or neither stroke nor fill), but are cut ${place(p)}.`,
    remedy: () => 'Delete them, or make them visible if they are meant.',
  },
  'check-hidden-left-out': {
    message: (p) =>
      p.layer === ''
        ? `${p.count} hidden parts were left out.`
        : `${p.count} hidden parts were left out, the first on layer “${p.layer}”.`,
    remedy: () =>
      'Some control programs cut hidden parts all the same: delete what should not be cut.',
  },
  'check-paper-left-out': {
    message: (p) => `${p.count} parts on the sheet for printing (paper space) were left out.`,
    remedy: () => 'Draw in the model what is to be cut.',
  },
  'check-curve-guessed': {
    message: (p) =>
      `Of ${p.count} splines the file gives only points that they pass through; between them each program draws its own.`,
    remedy: () => 'Turn splines into polylines or arcs in the program that drew them.',
  },
  'check-units-assumed': {
    message: () => 'The drawing does not say how long its unit is.',
    remedy: () => 'Measure a known length in the control program before cutting.',
  },
} satisfies Sentences<FilecheckCode>;

/** What can be the matter with a card file or a drawing on its way out or in. */
export const drawingWords = {
  'card-file-cell-differs': {
    message: (p) =>
      `In the file of card ${p.card}, shape ${p.cell} says other figures than its setting.`,
    remedy: () => 'The file was changed by hand or is damaged. Take it from where it was made.',
  },
  'card-file-part-differs': {
    message: (p) => `In the file of card ${p.card}, ${p.part} is not what the card gives.`,
    remedy: () => 'The file was changed by hand or is damaged. Take it from where it was made.',
  },
  'gcode-layer-without-setting': {
    message: (p) => `Nobody has said with what the ${p.layer} of this card are cut.`,
    remedy: () => 'Tell what you score a line with, or take a drawing instead of G-code.',
  },
  'gcode-corner-power-not-carried': {
    message: (p) =>
      `G-code has one power for a whole line: it cannot carry the corner power of ${p.rung}, ${p.minPowerPct} % beside ${p.powerPct} %.`,
    remedy: () =>
      'Take the SVG or DXF and type the powers in the control program. In G-code every setting would be cut alike, whatever the words beside it say.',
  },
  'gcode-pressure-not-carried': {
    message: (p) =>
      `G-code opens and shuts the air, but cannot set its pressure: ${p.one} wants ${p.oneKpa} kPa, ${p.other} ${p.otherKpa} kPa.`,
    remedy: () =>
      'Take the SVG or DXF and turn the gauge between the settings, or give all of them one pressure.',
  },
  'gcode-line-switches-output': {
    message: (p) =>
      `“${p.text}”, a line of the machine’s own, switches an output of the controller by its number. The laser may hang on it, and would light where it stands.`,
    remedy: () =>
      'Take the line out of the machine’s own lines. Switch air with M7 or M8, and lamp, fan or chiller by hand or in the controller.',
  },
  'gcode-line-hides-words': {
    message: (p) =>
      `“${p.text}”, a line of the machine’s own, calls or works out what the file does not show. It could light the beam.`,
    remedy: () => 'Write out what it does, in plain words of G-code, or take the line out.',
  },
  'gcode-line-sets-controller': {
    message: (p) =>
      `“${p.text}”, a line of the machine’s own, changes a stored value of the controller. The same S could then mean another power.`,
    remedy: () =>
      'Set the controller up once, by itself, and take the line out of the machine’s own lines.',
  },
  'gcode-unreadable': {
    message: (p) => `The program cannot be carried out from line ${p.line} on: ${p.why}.`,
    remedy: () => 'Mend that line, or write the program anew.',
  },
  'drawing-kind-unknown': {
    message: () => 'This is neither SVG nor DXF nor G-code.',
    remedy: () => 'Save it as one of these. DXF must be the text kind.',
  },
  'drawing-too-big': {
    message: (p) => `The file has ${p.megabytes} MB.`,
    remedy: (p) => `No more than ${p.most} MB are read. Leave out pictures and doubled lines.`,
  },
  'drawing-too-many-points': {
    message: (p) => `The file has more than ${p.points} points.`,
    remedy: () => 'Simplify its curves.',
  },
  'drawing-unreadable': {
    message: (p) => `The ${p.kind} cannot be read: ${p.detail}.`,
    remedy: () => 'Save it anew from the program that drew it.',
  },
  'drawing-declares-entities': {
    message: () => 'The SVG declares entities of its own, which no drawing needs and attacks do.',
    remedy: () => 'Save it as plain SVG, without a document type.',
  },
  'drawing-number-absurd': {
    message: (p) => `Line ${p.where} of the drawing lies further away than any bed reaches.`,
    remedy: () => 'Check the unit of the drawing.',
  },
  'drawing-too-many-parts': {
    message: (p) => `The drawing has more than ${p.most} parts, copies included.`,
    remedy: () => 'Look for copies of copies, and for hatching made of single strokes.',
  },
  'drawing-copies-itself': {
    message: (p) => `In the drawing, ${p.name} is made of copies of itself, without end.`,
    remedy: () => 'Save it anew, with copies and blocks turned into plain lines.',
  },
} satisfies Sentences<DrawingCode>;
