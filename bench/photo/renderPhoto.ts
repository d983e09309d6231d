import { seededRandom } from '../../src/num/seededRandom.ts';
import type { Picture } from '../../src/core/photo/picture.ts';
import { cardRaster, kind, pxPerMm } from './cardRaster.ts';
import type { Light } from './materials.ts';
import type { Scene } from './scene.ts';

/**
 * What a camera over the bench sees of a card that lies on a sheet of paper: a pinhole camera, a card as thick as it is
 * (with walls of its holes, what shows under them, and shadows), light that falls off, blur, noise.
 */
export const renderPhoto = (scene: Scene, side: 'front' | 'back'): Picture => {
  const { widthPx, heightPx } = scene;
  const light = lightOf(scene, side);
  motionBlur(light, scene);
  gaussianBlur(light, scene);
  return toPicture(light, { widthPx, heightPx }, scene);
};

/** Further off than a shadow or a thumb reaches. */
const farMm = 14;

const samples = [
  [0.25, 0.7],
  [0.75, 0.3],
] as const;

/** Linear light at every pixel, three values each. */
const lightOf = (scene: Scene, side: 'front' | 'back'): Float32Array => {
  const { card, widthPx, heightPx, thicknessMm, look, backing } = scene;
  const random = seededRandom(scene.seed + (side === 'back' ? 1 : 0));
  const raster = cardRaster({
    card,
    grades: scene.grades,
    side,
    kerfMm: 0.15 + 0.15 * random.uniform(),
    seed: scene.seed + 2,
  });
  const camera = cameraOf(scene);
  const at = (x: number, y: number): number => {
    const [i, j] = [Math.floor(x * pxPerMm), Math.floor(y * pxPerMm)];
    return i < 0 || j < 0 || i >= raster.widthPx || j >= raster.heightPx
      ? kind.outside
      : (raster.places[j * raster.widthPx + i] ?? kind.outside);
  };
  const isOpen = (place: number): boolean =>
    place === kind.outside || place === kind.hole || place === kind.slit;
  const lightDir = (scene.lightDeg * Math.PI) / 180;
  const [lx, ly] = [Math.cos(lightDir) * scene.lightSlope, Math.sin(lightDir) * scene.lightSlope];
  const phases = Array.from({ length: 8 }, () => random.uniform() * 2 * Math.PI);
  const grainAt = (x: number, y: number): number => {
    let sum = 0;
    for (let k = 0; k < 6; k += 1)
      sum += Math.sin(
        y * (1.3 + 1.9 * k) +
          0.35 * Math.sin(x * 0.11 + (phases[k] ?? 0)) * (k + 1) +
          (phases[k] ?? 0) * 3,
      );
    return (look.grain * sum) / 3;
  };
  const roomAt = (x: number, y: number): number =>
    0.5 +
    0.28 * Math.sin(x * 0.05 + (phases[0] ?? 0)) +
    0.22 * Math.sin(y * 0.06 + x * 0.02 + (phases[1] ?? 0));
  const smokeAt = card.cells.map(({ xMm, yMm }) => ({
    x: (side === 'back' ? card.widthMm - xMm : xMm) + 2 * random.normal(),
    y: yMm + 2 * random.normal(),
    strength: scene.smoke * random.uniform(),
  }));
  const smokeFree = finely(card, (x, y) =>
    smokeAt.reduce((left, spot) => {
      const far = ((x - spot.x) ** 2 + (y - spot.y) ** 2) / 60;
      return far < 4 ? left * (1 - spot.strength * Math.exp(-far)) : left;
    }, 1),
  );
  const grain = finely(card, grainAt);
  const thumb = [
    random.uniform() < 0.5 ? 0 : card.widthMm,
    random.uniform() < 0.5 ? 0 : card.heightMm,
  ] as const;
  const out = new Float32Array(widthPx * heightPx * 3);
  for (let v = 0; v < heightPx; v += 1)
    for (let u = 0; u < widthPx; u += 1) {
      let [r, g, b] = [0, 0, 0];
      const middle = camera(u + 0.5, v + 0.5);
      const isFarOff =
        middle.x < -farMm ||
        middle.y < -farMm ||
        middle.x > card.widthMm + farMm ||
        middle.y > card.heightMm + farMm;
      for (const [du, dv] of isFarOff ? [] : samples) {
        const { x, y, stepX, stepY } = camera(u + du, v + dv);
        let place = at(x, y);
        let colour: Light;
        if (scene.thumbMm > 0 && Math.hypot(x - thumb[0], y - thumb[1]) < scene.thumbMm)
          colour = [0.55, 0.32, 0.22];
        else if (isOpen(place)) {
          const [fx, fy] = [x + stepX * thicknessMm, y + stepY * thicknessMm];
          const mid = at(x + stepX * thicknessMm * 0.5, y + stepY * thicknessMm * 0.5);
          const floor = at(fx, fy);
          if (!isOpen(floor) || !isOpen(mid)) colour = look.clear > 0 ? look.colour : look.groove;
          else {
            // Under a hole the paper sees less of the room, and nothing of the lamp where the card stands before it.
            const lit = isOpen(at(fx + lx * thicknessMm, fy + ly * thicknessMm))
              ? 1
              : look.clear > 0
                ? 0.92
                : 0.6;
            const inHole = floor !== kind.outside;
            const sky = inHole && look.clear === 0 ? (place === kind.slit ? 0.25 : 0.82) : 1;
            colour = times(backing, lit * sky);
          }
        } else {
          const isPiece = place >= kind.piece;
          const shade = isPiece ? 1 + (raster.shades[place - kind.piece] ?? 0) : 1;
          if (isPiece) place = kind.surface;
          colour =
            place === kind.mark || place === kind.groove
              ? look.groove
              : times(look.colour, (1 + grain(x, y)) * shade);
          if (look.clear > 0 && place === kind.surface)
            colour = plus(times(backing, look.clear * shade), [0.02, 0.02, 0.02]);
          if (look.mirrors > 0 && place === kind.surface) {
            const mirrored = look.mirrors * roomAt(x, y) * shade;
            colour = plus(times(colour, 1 - look.mirrors), [mirrored, mirrored, mirrored]);
          }
          const left = smokeFree(x, y);
          colour = [colour[0] * left, colour[1] * left ** 1.3, colour[2] * left ** 1.6];
        }
        r += colour[0];
        g += colour[1];
        b += colour[2];
      }
      if (isFarOff) [r, g, b] = times(backing, samples.length);
      const lit = (illumination(scene, u, v) * scene.exposure) / samples.length;
      const k = 3 * (v * widthPx + u);
      out[k] = r * lit * scene.tint[0];
      out[k + 1] = g * lit * scene.tint[1];
      out[k + 2] = b * lit * scene.tint[2];
    }
  return out;
};

const finePerMm = 5;

/** A smooth quantity over the card, worked out once on a fine grid. */
const finely = (
  { widthMm, heightMm }: Scene['card'],
  of: (x: number, y: number) => number,
): ((x: number, y: number) => number) => {
  const [across, up] = [Math.ceil(widthMm * finePerMm) + 1, Math.ceil(heightMm * finePerMm) + 1];
  const values = Float32Array.from({ length: across * up }, (_, i) =>
    of((i % across) / finePerMm, Math.floor(i / across) / finePerMm),
  );
  return (x, y) => values[Math.round(y * finePerMm) * across + Math.round(x * finePerMm)] ?? 1;
};

const times = ([r, g, b]: Light, f: number): Light => [r * f, g * f, b * f];
const plus = ([r, g, b]: Light, [x, y, z]: Light): Light => [r + x, g + y, b + z];

const illumination = (
  { falloff, shadow, widthPx, heightPx }: Scene,
  u: number,
  v: number,
): number => {
  const [x, y] = [u / widthPx, v / heightPx];
  const even = 1 + falloff[0] * (x - 0.5) * 2 + falloff[1] * (y - 0.5) * 2;
  const level = Math.max(0.25, even);
  if (shadow === null) return level;
  const far = Math.hypot(x - shadow.at[0], (y - shadow.at[1]) * 0.75) / shadow.size;
  // A soft edge.
  const within = 1 / (1 + Math.exp((far - 0.5) * 30));
  return level * (1 - within * (1 - shadow.left));
};

interface Seen {
  readonly x: number;
  readonly y: number;
  /** How far the ray goes sideways for each mm that it goes down. */
  readonly stepX: number;
  readonly stepY: number;
}

export const cameraOf = (scene: Scene): ((u: number, v: number) => Seen) => {
  const { card, widthPx, heightPx } = scene;
  const rad = Math.PI / 180;
  const [tilt, towards, roll] = [scene.tiltDeg * rad, scene.towardsDeg * rad, scene.rollDeg * rad];
  const focalPx = 0.8 * widthPx;
  // The card's turned box must fit both ways.
  const spanX = Math.abs(card.widthMm * Math.cos(roll)) + Math.abs(card.heightMm * Math.sin(roll));
  const spanY = Math.abs(card.widthMm * Math.sin(roll)) + Math.abs(card.heightMm * Math.cos(roll));
  const far = Math.max((spanX * focalPx) / widthPx, (spanY * focalPx) / heightPx) / scene.fills;
  const out: Triple = [
    Math.sin(tilt) * Math.cos(towards),
    Math.sin(tilt) * Math.sin(towards),
    Math.cos(tilt),
  ];
  const eye: Triple = [
    card.widthMm / 2 + far * out[0],
    card.heightMm / 2 + far * out[1],
    far * out[2],
  ];
  // Axes of the picture: right and down, turned by the roll.
  const side = unit(cross([-Math.sin(roll), Math.cos(roll), 0], out));
  const down = cross(side, out);
  return (u, v) => {
    const [a, b] = [(u - widthPx / 2) / focalPx, (v - heightPx / 2) / focalPx];
    const ray: Triple = [
      side[0] * a + down[0] * b - out[0],
      side[1] * a + down[1] * b - out[1],
      side[2] * a + down[2] * b - out[2],
    ];
    const reach = -eye[2] / ray[2];
    return {
      x: eye[0] + ray[0] * reach,
      y: eye[1] + ray[1] * reach,
      stepX: ray[0] / -ray[2],
      stepY: ray[1] / -ray[2],
    };
  };
};

type Triple = readonly [number, number, number];
const cross = ([a, b, c]: Triple, [d, e, f]: Triple): Triple => [
  b * f - c * e,
  c * d - a * f,
  a * e - b * d,
];
const unit = (a: Triple): Triple => {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
};

const motionBlur = (
  light: Float32Array,
  { widthPx, heightPx, motionPx, motionDeg }: Scene,
): void => {
  if (motionPx < 1) return;
  const from = light.slice();
  const steps = Math.ceil(motionPx);
  const [dx, dy] = [Math.cos((motionDeg * Math.PI) / 180), Math.sin((motionDeg * Math.PI) / 180)];
  for (let v = 0; v < heightPx; v += 1)
    for (let u = 0; u < widthPx; u += 1)
      for (let c = 0; c < 3; c += 1) {
        let sum = 0;
        for (let s = 0; s <= steps; s += 1) {
          const t = motionPx * (s / steps - 0.5);
          const x = Math.min(widthPx - 1, Math.max(0, Math.round(u + dx * t)));
          const y = Math.min(heightPx - 1, Math.max(0, Math.round(v + dy * t)));
          sum += from[3 * (y * widthPx + x) + c] ?? 0;
        }
        light[3 * (v * widthPx + u) + c] = sum / (steps + 1);
      }
};

const gaussianBlur = (light: Float32Array, { widthPx, heightPx, blurPx }: Scene): void => {
  const reach = Math.ceil(2.5 * blurPx);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * blurPx ** 2)),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  const pass = (
    count: number,
    length: number,
    start: (i: number) => number,
    step: number,
  ): void => {
    const line = new Float32Array(length);
    for (let i = 0; i < count; i += 1) {
      const at = start(i);
      for (let k = 0; k < length; k += 1) line[k] = light[at + k * step] ?? 0;
      for (let k = 0; k < length; k += 1) {
        let value = 0;
        for (let w = -reach; w <= reach; w += 1)
          value +=
            (weights[w + reach] ?? 0) * (line[Math.min(length - 1, Math.max(0, k + w))] ?? 0);
        light[at + k * step] = value / sum;
      }
    }
  };
  for (let c = 0; c < 3; c += 1) {
    pass(heightPx, widthPx, (v) => 3 * v * widthPx + c, 3);
    pass(widthPx, heightPx, (u) => 3 * u + c, 3 * widthPx);
  }
};

const toPicture = (
  light: Float32Array,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
  { noise, seed }: Scene,
): Picture => {
  const random = seededRandom(seed + 7);
  // Normal numbers are drawn once and used again in another order: there are millions of them.
  const pool = Float32Array.from({ length: 65_537 }, () => random.normal());
  const rgb = new Uint8Array(light.length);
  for (let i = 0; i < light.length; i += 1) {
    const value = light[i] ?? 0;
    const noisy =
      value + noise * Math.sqrt(0.15 + Math.max(0, value)) * (pool[(i * 7919) % pool.length] ?? 0);
    rgb[i] = Math.min(255, Math.max(0, Math.round(255 * srgb(noisy))));
  }
  return { widthPx, heightPx, rgb };
};

/** IEC 61966-2-1. */
const srgb = (linear: number): number =>
  linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.max(0, linear) ** (1 / 2.4) - 0.055;
