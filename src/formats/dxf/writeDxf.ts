import { DxfWriter, LayerFlags, LWPolylineFlags, TrueColor, Units } from '@tarikjabiri/dxf';
import type { CardDrawing, DrawnLayer } from '../../core/card/cardDrawing.ts';
import { isClosed } from '../../core/path/polyline.ts';
import { notesLayer } from './notesLayer.ts';
import { brokenInto } from '../brokenInto.ts';
import { indexColours, inkIndex } from '../../core/card/indexColours.ts';

/**
 * A drawing as DXF (version AC1021) in mm: one layer a rung, entities in the order of cutting, light polylines only. The
 * colour is given twice, in full and as the nearest free index, since many readers know only the index;
 * ink only as the index that stands out on any ground. `notes` (cautions,
 * say) stand above the drawing as text in a frozen layer of their own, which nothing cuts.
 */
export const writeDxf = (drawing: CardDrawing, notes: readonly string[] = []): string => {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Throughcut' });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: drawing.widthMm, 20: drawing.heightMm, 30: 0 });
  const indices = indexColours(drawing.layers.map((layer) => layer.colour));
  drawing.layers.forEach((layer, i) => addLayer(dxf, layer, indices[i] ?? 7));
  if (notes.length > 0) addNotes(dxf, drawing, notes);
  return dxf.stringify();
};

const noteMm = 3;
const noteSigns = 90;

/** One text a line: many readers know no text of several. The last is nearest to the drawing. */
const addNotes = (dxf: DxfWriter, { heightMm }: CardDrawing, notes: readonly string[]): void => {
  dxf.addLayer(notesLayer, 8, 'Continuous', LayerFlags.Frozen);
  dxf.setCurrentLayerName(notesLayer);
  const lines = notes.flatMap((note) => brokenInto(note, noteSigns));
  lines.forEach((line, i) => {
    const y = heightMm + 2 * noteMm + (lines.length - 1 - i) * 1.6 * noteMm;
    dxf.addText({ x: 0, y: Number(y.toFixed(4)), z: 0 }, noteMm, line);
  });
};

const addLayer = (dxf: DxfWriter, layer: DrawnLayer, index: number): void => {
  const added = dxf.addLayer(layer.name, index);
  if (index !== inkIndex) added.trueColor = TrueColor.fromHex(layer.colour);
  dxf.setCurrentLayerName(layer.name);
  for (const line of layer.polylines) {
    const loops = isClosed(line);
    const points = (loops ? line.slice(0, -1) : line).map(([x, y]) => ({
      point: { x: Number(x.toFixed(4)), y: Number(y.toFixed(4)) },
    }));
    dxf.addLWPolyline(points, loops ? { flags: LWPolylineFlags.Closed } : {});
  }
};
