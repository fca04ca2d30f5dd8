import { useLayoutEffect, useRef, useState } from "preact/hooks";

/** Size of an element in CSS px, kept up to date. */
export function useSize<E extends Element>() {
  const ref = useRef<E>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const take = (): void => {
      const box = element.getBoundingClientRect();
      setSize((old) =>
        old.width === box.width && old.height === box.height ? old : { width: box.width, height: box.height },
      );
    };
    take();
    const observer = new ResizeObserver(take);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, ...size };
}
