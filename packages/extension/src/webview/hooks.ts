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
