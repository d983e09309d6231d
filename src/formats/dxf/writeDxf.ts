import { DxfWriter, LWPolylineFlags, TrueColor, Units } from '@tarikjabiri/dxf';
import type { CardDrawing, DrawnLayer } from '../../core/card/cardDrawing.ts';
import { isClosed } from '../../core/path/polyline.ts';
import { indexColours } from '../../core/card/indexColours.ts';

/**
 * A drawing as DXF (AutoCAD 2007) in mm: one layer a rung, entities in the order of cutting, light polylines only. The
 * colour is given twice, in full and as the nearest free index, since many readers know only the index.
 */
export const writeDxf = (drawing: CardDrawing): string => {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Throughcut' });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: drawing.widthMm, 20: drawing.heightMm, 30: 0 });
  const indices = indexColours(drawing.layers.map((layer) => layer.colour));
  drawing.layers.forEach((layer, i) => addLayer(dxf, layer, indices[i] ?? 7));
  return dxf.stringify();
};

const addLayer = (dxf: DxfWriter, layer: DrawnLayer, index: number): void => {
  dxf.addLayer(layer.name, index).trueColor = TrueColor.fromHex(layer.colour);
  dxf.setCurrentLayerName(layer.name);
  for (const line of layer.polylines) {
    const loops = isClosed(line);
    const points = (loops ? line.slice(0, -1) : line).map(([x, y]) => ({
      point: { x: Number(x.toFixed(4)), y: Number(y.toFixed(4)) },
    }));
    dxf.addLWPolyline(points, loops ? { flags: LWPolylineFlags.Closed } : {});
  }
};
