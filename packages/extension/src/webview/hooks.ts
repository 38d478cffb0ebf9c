import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Host } from './host.js';

/** Hears what the extension says, from when it has been told that the page listens. */
export function useMessages<Say extends { readonly kind: string }, Kept, Heard>(
  host: Host<Say | { readonly kind: 'ready' }, Kept>,
  hear: (message: Heard) => void,
): void {
  const latest = useRef(hear);
  latest.current = hear;
  useEffect(() => {
    const heard = ({ data }: MessageEvent<Heard>) => latest.current(data);
    window.addEventListener('message', heard);
    host.say({ kind: 'ready' });
    return () => window.removeEventListener('message', heard);
  }, [host]);
}

/** Keeps what the reader has set for when the page is shown again, once it is known of which file it is. */
export function useKept<Say, Kept extends { readonly uri: string }>(host: Host<Say, Kept>, view: Kept): void {
  useEffect(() => {
    if (view.uri !== '') host.keep(view);
  }, [host, view]);
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Steps in which a size is told, pixels: a border that is dragged has not everything drawn anew at every pixel. */
const STEP = 20;

/** Tells how large an element of the page is, now and whenever that changes; the element is the one it is put on. */
export function useMeasured<E extends Element>(tell: (size: Size) => void): RefObject<E> {
  const of = useRef<E>(null);
  useEffect(() => {
    if (!of.current) return;
    const observer = new ResizeObserver(([entry]) => {
      const stepped = (pixels: number) => Math.round(pixels / STEP) * STEP;
      const { width, height } = entry?.contentRect ?? { width: 0, height: 0 };
      if (width > 0 && height > 0) tell({ width: stepped(width), height: stepped(height) });
    });
    observer.observe(of.current);
    return () => observer.disconnect();
  }, [tell]);
  return of;
}
