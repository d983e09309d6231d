import './code.css';

export interface CodePictureProps {
  /** Rows of dark and light. */
  readonly matrix: readonly (readonly boolean[])[];
  readonly label: string;
}

/** A square code for a phone's camera: always dark on light, whatever the page's scheme. */
export const CodePicture = ({ matrix, label }: CodePictureProps) => (
  <svg
    className="code-picture"
    viewBox={`0 0 ${matrix.length} ${matrix.length}`}
    role="img"
    aria-label={label}
  >
    <rect className="code-light" width={matrix.length} height={matrix.length} />
    <path
      className="code-dark"
      d={matrix
        .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')))
        .join('')}
    />
  </svg>
);
