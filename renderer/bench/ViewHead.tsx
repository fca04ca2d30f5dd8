interface ViewHeadProps {
  readonly id: string;
  /** letter in a ring, as details on a drawing have */
  readonly tag: string;
  readonly title: string;
  readonly sub: string;
}

/** Head of a view: its letter, name, and what it shows. */
export const ViewHead = ({ id, tag, title, sub }: ViewHeadProps) => (
  <h2 class="view-head" id={id}>
    <span class="tag">{tag}</span>
    {title} <small>{sub}</small>
  </h2>
);
