import { type Scene, USUAL_VIEW } from '@dryfit/output';
import type { Size } from '../hooks.js';

/** How the whole cabinet is looked at: degrees round it, degrees from above, and how far its parts are pulled apart (0 to 1). */
export interface Stance {
  readonly turn: number;
  readonly tilt: number;
  readonly apart: number;
}

/** What of a drawing is seen: how much larger, and which point of it, as a share of its width and height, is in the middle. */
export interface Frame {
  readonly zoom: number;
  readonly x: number;
  readonly y: number;
}

/** All that a reader has set. Kept while the text changes, and for when the page is shown again. */
export interface View {
  /** The file, so that the page finds it again. */
  readonly uri: string;
  /** Title of the cabinet shown. */
  readonly cabinet: string;
  readonly shows: 'cabinet' | 'part';
  /** The part drawn alone. */
  readonly part: string;
  readonly stance: Stance;
  /** Frames of the two drawings. */
  readonly frames: { readonly cabinet: Frame; readonly part: Frame };
  /** The shape chosen. */
  readonly chosen: string;
  readonly asTable: boolean;
  /** What is cut into far sides is drawn in hidden lines. */
  readonly hiddenLines: boolean;
  /** The step of the glue-up that is drawn, the first being 0; absent while the cabinet is drawn with all its parts. */
  readonly step?: number | undefined;
}

export const WHOLE: Frame = { zoom: 1, x: 0.5, y: 0.5 };
const STANCE: Stance = USUAL_VIEW;

export const START: View = {
  uri: '',
  cabinet: '',
  shows: 'cabinet',
  part: '',
  stance: STANCE,
  frames: { cabinet: WHOLE, part: WHOLE },
  chosen: '',
  asTable: false,
  hiddenLines: true,
};

export type Act =
  | { readonly do: 'file'; readonly uri: string }
  | { readonly do: 'cabinet'; readonly cabinet: string }
  | { readonly do: 'show'; readonly shows: View['shows'] }
  | { readonly do: 'part'; readonly part: string }
  | { readonly do: 'choose'; readonly shape: string; readonly part?: string | undefined }
  | { readonly do: 'turn'; readonly turn: number; readonly tilt: number }
  | { readonly do: 'pull'; readonly apart: number }
  /** Nearer (over 1) or farther, keeping a point of the frame where it is: shares of the frame, 0.5 for its middle. */
  | { readonly do: 'zoom'; readonly by: number; readonly at?: { readonly x: number; readonly y: number } | undefined }
  /** Moves what is seen by shares of the frame. */
  | { readonly do: 'move'; readonly x: number; readonly y: number }
  | { readonly do: 'whole' }
  | { readonly do: 'table'; readonly asTable: boolean }
  | { readonly do: 'hidden lines'; readonly shown: boolean }
  | { readonly do: 'step'; readonly step: number | undefined };

export const NEAREST = 20;
export const FARTHEST = 0.5;

export function act(view: View, done: Act): View {
  switch (done.do) {
    case 'file':
      return { ...view, uri: done.uri };
    case 'cabinet':
      return { ...view, cabinet: done.cabinet };
    case 'show':
      return { ...view, shows: done.shows };
    case 'part':
      // Another part is another drawing: what was near in one is nowhere in the other.
      return {
        ...view,
        shows: 'part',
        part: done.part,
        frames: done.part === view.part ? view.frames : { ...view.frames, part: WHOLE },
      };
    case 'choose':
      return { ...view, chosen: done.shape, part: view.shows === 'part' ? view.part : (done.part ?? view.part) };
    case 'turn':
      return {
        ...view,
        stance: {
          ...view.stance,
          turn: round(((((view.stance.turn + done.turn + 180) % 360) + 360) % 360) - 180),
          tilt: round(within(view.stance.tilt + done.tilt, -90, 90)),
        },
      };
    case 'pull':
      return { ...view, stance: { ...view.stance, apart: round(within(done.apart, 0, 1)) } };
    case 'zoom':
      return framed(view, (frame) => zoomed(frame, done.by, done.at ?? { x: 0.5, y: 0.5 }));
    case 'move':
      return framed(view, (frame) =>
        kept({ ...frame, x: frame.x + done.x / frame.zoom, y: frame.y + done.y / frame.zoom }),
      );
    case 'whole':
      return framed(view, () => WHOLE);
    case 'table':
      return { ...view, asTable: done.asTable };
    case 'hidden lines':
      return { ...view, hiddenLines: done.shown };
    case 'step':
      return { ...view, step: done.step };
  }
}

/** The state a page starts with, out of whatever was kept. */
export function restored(given: Partial<View> | undefined): View {
  const view = { ...START, ...given };
  const number = (value: unknown, otherwise: number) =>
    typeof value === 'number' && Number.isFinite(value) ? value : otherwise;
  const frame = (one: Partial<Frame> | undefined): Frame =>
    kept({ zoom: number(one?.zoom, 1), x: number(one?.x, 0.5), y: number(one?.y, 0.5) });
  return {
    ...view,
    stance: {
      turn: number(view.stance?.turn, STANCE.turn),
      tilt: within(number(view.stance?.tilt, STANCE.tilt), -90, 90),
      apart: within(number(view.stance?.apart, STANCE.apart), 0, 1),
    },
    frames: { cabinet: frame(view.frames?.cabinet), part: frame(view.frames?.part) },
    step: Number.isInteger(view.step) ? view.step : undefined,
  };
}

/** The step to draw: the one wanted, or the last one where the text has left fewer; none of a cabinet that has none. */
export function stepOf({ steps = [] }: Scene, { shows, step }: Pick<View, 'shows' | 'step'>): number | undefined {
  if (shows !== 'cabinet' || step === undefined || steps.length === 0) return undefined;
  return within(step, 0, steps.length - 1);
}

/** The size of a sheet that fills so many pixels with words that are a little smaller than the page's own. */
export function sheetFor(size: Size): Size {
  const scale = Math.max(WORDS, LEAST_SHEET / Math.max(size.width, 1));
  return { width: size.width * scale, height: size.height * scale };
}

/** Height of a drawing's words in its own measure against that on the screen, pixels. */
const WORDS = 14 / 12;

/** A sheet that is narrower has no room for a picture between its names. */
const LEAST_SHEET = 560;

/** The cabinet to show: the one wanted, or else the one of that name, or else the first. */
export function cabinetOf(scenes: readonly Scene[], { cabinet }: Pick<View, 'cabinet'>): Scene | undefined {
  const name = cabinet.replace(/ \(.*$/, '');
  return scenes.find(({ title }) => title === cabinet) ?? scenes.find((scene) => scene.cabinet === name) ?? scenes[0];
}

/** The part to draw alone: the one wanted, or else the first that can be drawn. */
export function partOf(scene: Scene, { part }: Pick<View, 'part'>): string | undefined {
  const drawn = scene.parts.filter(({ box }) => box !== undefined);
  return (drawn.find((one) => one.part === part) ?? drawn[0])?.part;
}

/** The part that a shape is, or is cut into. */
export function partWith(scene: Scene, shape: string): string | undefined {
  return scene.parts.find(
    (part) => part.shape === shape || [...part.cuts, ...(part.along ?? [])].some((cut) => cut.shape === shape),
  )?.part;
}

function framed(view: View, change: (frame: Frame) => Frame): View {
  return { ...view, frames: { ...view.frames, [view.shows]: change(view.frames[view.shows]) } };
}

function zoomed(frame: Frame, by: number, at: { readonly x: number; readonly y: number }): Frame {
  const zoom = within(frame.zoom * by, FARTHEST, NEAREST);
  const shift = 1 / frame.zoom - 1 / zoom;
  return kept({ zoom, x: frame.x + (at.x - 0.5) * shift, y: frame.y + (at.y - 0.5) * shift });
}

/** The middle of what is seen never leaves the drawing, so that it cannot be lost. */
const kept = ({ zoom, x, y }: Frame): Frame => ({
  zoom: within(zoom, FARTHEST, NEAREST),
  x: within(x, 0, 1),
  y: within(y, 0, 1),
});

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));
const round = (value: number): number => Math.round(value * 1000) / 1000;
