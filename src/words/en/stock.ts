import type { JudgedMaterialName } from '../../core/judgedMaterials.ts';
import type { StockCode } from '../../core/problems/stock.ts';
import type { Sentences } from '../shape/sentence.ts';
import { judgedMaterialWords as judged } from './judgedMaterials.ts';

const whyOf = (name: JudgedMaterialName): string =>
  `${judged[name].reason} Hazard: ${judged[name].hazards.join(', ')}.`;

const sourceOf = (name: JudgedMaterialName): string =>
  `Source: ${judged[name].sources.join('; ')}.`;

export const stockWords = {
  'material-refused': {
    message: (p) => `“${p.text}” is not cut here: ${judged[p.judged].name}. ${whyOf(p.judged)}`,
    remedy: (p) =>
      `Choose another material. If it is something else, name it as its data sheet does. ${sourceOf(p.judged)}`,
  },
  'material-caution': {
    message: (p) => `${judged[p.judged].name}: cut with care. ${whyOf(p.judged)}`,
    remedy: (p) =>
      `Extraction on, extinguisher at hand, stay with it; your local rules and the maker’s data sheet come first. ${sourceOf(p.judged)}`,
  },
  'material-which-leather': {
    message: (p) =>
      `“${p.text}”: which leather? Chromium-tanned and imitation leather are not cut here.`,
    remedy: () =>
      'Ask the seller how it was tanned. If it is vegetable-tanned, write “vegetable-tanned leather”; if nobody knows, do not cut it.',
  },
  'material-which-cloth': {
    message: (p) => `“${p.text}”: of which fibre? Artificial fibre is not cut here.`,
    remedy: () => 'Write the fibre, such as cotton, linen or wool. If nobody knows, do not cut it.',
  },
  'material-which-felt': {
    message: (p) =>
      `“${p.text}”: of which fibre? Acrylic fibre is no acrylic sheet: it gives off hydrogen cyanide. Polyester melts and burns.`,
    remedy: () =>
      'Ask the seller for the fibre. If it is wool, write “wool felt”; if nobody knows, do not cut it.',
  },
  'material-which-plastic': {
    message: (p) =>
      `“${p.text}”: which plastic, by its data sheet? Some sheet that looks like acrylic is PVC, polycarbonate or styrene; polyester and polyethylene melt and burn, and some workshops prohibit them.`,
    remedy: () =>
      'Find the maker’s data sheet and write what it says. If nobody knows, do not cut it.',
  },
  'material-which-layers': {
    message: (p) => `“${p.text}”: what are its layers? The film may be PVC, the glue may burn.`,
    remedy: () => 'Ask the seller what the film and the glue are. If nobody knows, do not cut it.',
  },
  'material-what-instead': {
    message: (p) => `“${p.text}” says what it is not, but not what it is.`,
    remedy: () => 'Write what it is, as its data sheet names it. If nobody knows, do not cut it.',
  },
  'material-rubber-data-sheet': {
    message: (p) =>
      `“${p.text}”: only rubber sold for laser work, with a data sheet that says so, is cut here.`,
    remedy: () =>
      'Read the data sheet. If it names chlorine, fluorine or nothing at all, do not cut it.',
  },
  'material-unknown': {
    message: (p) => `“${p.text}” is not in the list of materials.`,
    remedy: () =>
      'Find out what it is before you cut it. If it is any plastic and you are not sure which, do not cut it.',
  },
  'air-off-burns': {
    message: () =>
      'Air off: flames stand and soot fouls the lens. Small pieces only, someone watching every second, extinguisher in hand.',
    remedy: () => 'Your local rules come first. In wood, compare low air with high air instead.',
  },
  'label-lies': {
    message: (p) =>
      `The sheet measures ${p.meanMm} mm (± ${p.uncertaintyMm}), not ${p.nominalMm} mm: ${p.differencePct} % off its label.`,
    remedy: () => 'The measured thickness is used from here on.',
  },
  'label-beyond-standard': {
    message: (p) =>
      `The sheet measures ${p.meanMm} mm (± ${p.uncertaintyMm}), not ${p.nominalMm} mm: ${p.differencePct} % off its label, and outside the ${p.leastMm} to ${p.mostMm} mm that its standard allows (${p.standard}).`,
    remedy: () =>
      'The measured thickness is used from here on. The seller may owe you another sheet.',
  },
  'thickness-one-reading': {
    message: () => 'Thickness was measured in one place only.',
    remedy: () =>
      'Measure in several places: corners and middles of the sides, about 50 mm in. EN 324-1 asks for eight.',
  },
  'thickness-readings-disagree': {
    message: (p) => `The thickness readings run from ${p.leastMm} to ${p.mostMm} mm.`,
    remedy: () =>
      'Look for a slip of the caliper or of the keys; if they are right, the promise holds less surely.',
  },
  'energy-too-little': {
    message: (p) =>
      `${p.watts} W at ${p.speedMmPerS} mm/s through ${p.thicknessMm} mm is ${p.energyJPerMm2} J/mm², about ${p.factor} times less than cutting wood took in a published trial.`,
    remedy: () =>
      'Check the unit of the speed (mm/s, not m/min or mm/min), the power and the thickness.',
  },
  'energy-too-much': {
    message: (p) =>
      `${p.watts} W at ${p.speedMmPerS} mm/s through ${p.thicknessMm} mm is ${p.energyJPerMm2} J/mm², about ${p.factor} times more than cutting wood took in a published trial.`,
    remedy: () => 'Check the unit of the speed and the thickness. So much heat sets sheets alight.',
  },
  'speed-looks-too-fast': {
    message: (p) =>
      `${p.speedMmPerS} mm/s at ${p.powerPct} % through ${p.thicknessMm} mm is about ${p.factor} times faster than such sheet is usually cut.`,
    remedy: () =>
      'Check the unit of the speed (mm/s, not m/min or mm/min), the power and the thickness. Keep it if it is right.',
  },
  'speed-looks-too-slow': {
    message: (p) =>
      `${p.speedMmPerS} mm/s at ${p.powerPct} % through ${p.thicknessMm} mm is about ${p.factor} times slower than such sheet is usually cut.`,
    remedy: () =>
      'Check the unit of the speed and the thickness. So much heat sets sheets alight. Keep it if it is right.',
  },
} satisfies Sentences<StockCode>;
