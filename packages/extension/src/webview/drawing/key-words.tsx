/** Which keys do what on the drawing. */
export function KeyWords({ whole }: { readonly whole: boolean }) {
  return (
    <details>
      <summary>Mouse and keys</summary>
      <p id="keys">
        {whole
          ? 'Drag to turn the cabinet, with Shift to slide the drawing. Arrow keys slide it, with Shift they turn it; full stop and comma pull the parts apart and together. What is cut into the far side of a part is dashed. '
          : 'Drag to slide the drawing, or use the arrow keys. '}
        Plus and minus, or Ctrl and the wheel, go nearer and farther; 0 shows all of it. Tab goes into the drawing,
        where the arrow keys go from shape to shape and name to name, Enter goes to the text, and once more to the next
        place that has to do with it. Escape leaves the shapes. A double click draws a part alone.
      </p>
    </details>
  );
}
