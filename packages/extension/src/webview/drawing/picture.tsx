import type { Element } from '@dryfit/output';
import { type ComponentChild, h } from 'preact';
import { useMemo, useRef, useState } from 'preact/hooks';
import type { Lit } from '../../panel/messages.js';
import { type Size, useMeasured } from '../hooks.js';
import { boxOf, seen } from './box.js';
import { keyAfter, keyOn } from './keys.js';
import { type Target, targetOf, targetsIn } from './shapes.js';
import type { Act, View } from './state.js';

interface PictureProps {
  readonly element: Element;
  readonly view: View;
  readonly lit: Lit;
  readonly label: string;
  /** What a shape is, in words. */
  readonly labelOf: (shape: string) => string | undefined;
  readonly act: (done: Act) => void;
  readonly choose: (shape: string) => void;
  readonly open: (shape: string) => void;
  readonly alone: (shape: string) => void;
  /** How large it is, pixels. */
  readonly measured: (size: Size) => void;
}

/** A drawing that can be looked at from near and far, and whose shapes can be chosen by mouse and by keys. */
export function Picture(props: PictureProps) {
  const { element, view, lit, act } = props;
  const frame = view.frames[view.shows];
  const targets = useMemo(() => targetsIn(element), [element]);
  const keys = useMemo(() => targets.map(({ key }) => key), [targets]);
  // Where the keys last went: to a shape, or to the name of one.
  const [gone, go] = useState('');
  const went = targets.find(({ key }) => key === gone);
  const current = went?.shape === view.chosen ? gone : keys.includes(view.chosen) ? view.chosen : (keys[0] ?? '');
  const section = useMeasured<HTMLElement>(props.measured);
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<{ x: number; y: number; moved: boolean; slide: boolean } | undefined>(undefined);

  const down = (event: PointerEvent) => {
    if (event.button > 1) return;
    const slide = view.shows === 'part' || event.shiftKey || event.button === 1;
    drag.current = { x: event.clientX, y: event.clientY, moved: false, slide };
  };
  const move = (event: PointerEvent) => {
    const from = drag.current;
    const size = svg.current?.getBoundingClientRect();
    if (!from || !size || event.buttons === 0) return;
    const [x, y] = [event.clientX - from.x, event.clientY - from.y];
    // A hand that clicks trembles: a drag begins after some pixels.
    if (!from.moved && Math.hypot(x, y) < 5) return;
    if (!from.moved) svg.current?.setPointerCapture(event.pointerId);
    drag.current = { ...from, x: event.clientX, y: event.clientY, moved: true };
    act(
      from.slide ? { do: 'move', x: -x / size.width, y: -y / size.height } : { do: 'turn', turn: -x / 3, tilt: y / 3 },
    );
  };
  const click = (event: MouseEvent) => {
    const dragged = drag.current?.moved;
    drag.current = undefined;
    const shape = dragged ? undefined : shapeOf(event.target);
    if (shape !== undefined) props.open(shape);
  };
  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    const size = svg.current?.getBoundingClientRect();
    const at = size && { x: (event.clientX - size.left) / size.width, y: (event.clientY - size.top) / size.height };
    act({ do: 'zoom', by: Math.exp(-event.deltaY / 300), at });
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const from = targetAt(event.target);
    const shape = from?.shape;
    if (from === undefined || shape === undefined) {
      const done = keyOn(event, view);
      if (!done) return;
      act(done);
    } else {
      const next = keyAfter(keys, from.key, event.key);
      const to = targets.find(({ key }) => key === next);
      if (to !== undefined) {
        go(to.key);
        props.choose(to.shape);
        focusOn(svg.current, to);
      } else if (event.key === 'Enter' || event.key === ' ') props.open(shape);
      else if (event.key === 'Escape') svg.current?.parentElement?.focus();
      else {
        const done = keyOn(event, view);
        if (!done) return;
        act(done);
      }
    }
    event.preventDefault();
    event.stopPropagation();
  };

  const marked = (shape: string) =>
    [lit[shape] && `lit ${lit[shape]}`, shape === view.chosen && 'chosen'].filter(Boolean).join(' ');
  const dress = ({ key, shape }: Target, inner: boolean) => ({
    key,
    class: marked(shape),
    // Names of attributes are told apart by their letters' case in SVG.
    tabindex: key === current ? 0 : -1,
    role: inner ? 'group' : 'button',
    'aria-label': key === shape ? props.labelOf(shape) : `name: ${props.labelOf(shape)}`,
    'aria-current': shape === view.chosen ? 'true' : undefined,
  });
  return (
    <section
      ref={section}
      class="picture"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it takes keys that move and turn what is in it
      tabIndex={0}
      aria-label={props.label}
      aria-describedby="keys"
      aria-details="twin"
      onKeyDown={key}
      onPointerDown={down}
      onPointerMove={move}
      onClick={click}
      onDblClick={(event) => {
        const shape = shapeOf(event.target);
        if (shape !== undefined) props.alone(shape);
      }}
      onWheel={wheel}
    >
      <svg
        ref={svg}
        class={`dryfit-drawing ${view.shows}`}
        viewBox={seen(boxOf(element), frame)}
        preserveAspectRatio="xMidYMid meet"
      >
        <title>{props.label}</title>
        <defs>
          <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect class="hatch-ground" width="7" height="7" />
            <path class="hatch-line" d="M0 0V7" />
          </pattern>
        </defs>
        {element.children.map((child, i) => (isTitle(child) ? null : node(child, i, dress, marked)))}
      </svg>
    </section>
  );
}

type Dress = (target: Target, inner: boolean) => Record<string, unknown>;
type Marked = (shape: string) => string;

/** A drawing's element as one of the page; shapes keep theirs while others come and go. */
function node(child: Element | string, index: number, dress: Dress, marked: Marked): ComponentChild {
  if (typeof child === 'string') return child;
  const { tag, attributes, children } = child;
  const target = targetOf(attributes);
  const again = attributes['data-again'];
  const own =
    target !== undefined
      ? dress(target, children.some(hasShape))
      : { key: index, class: again === undefined ? '' : marked(String(again)) };
  const dressed = { ...attributes, ...own, class: [attributes.class, own.class].filter(Boolean).join(' ') };
  return h(tag, dressed, ...children.map((one, i) => node(one, i, dress, marked)));
}

/** The page has words of its own for what is drawn. */
const isTitle = (child: Element | string): boolean => typeof child !== 'string' && child.tag === 'title';

const hasShape = (child: Element | string): boolean =>
  typeof child !== 'string' && (child.attributes['data-shape'] !== undefined || child.children.some(hasShape));

function targetAt(at: EventTarget | null): Target | undefined {
  const found = at instanceof SVGElement ? at.closest<SVGElement>('[data-shape], [data-names]') : null;
  const { shape, names } = found?.dataset ?? {};
  return targetOf({ 'data-shape': shape, 'data-names': names });
}

function shapeOf(target: EventTarget | null): string | undefined {
  const found =
    target instanceof SVGElement ? target.closest<SVGElement>('[data-shape], [data-again], [data-names]') : null;
  return found?.dataset.shape ?? found?.dataset.again ?? found?.dataset.names;
}

function focusOn(svg: SVGSVGElement | null, { key, shape }: Target): void {
  const found = svg?.querySelector(`[${key === shape ? 'data-shape' : 'data-names'}="${CSS.escape(shape)}"]`);
  if (found instanceof SVGElement) found.focus();
}
