import './looks.css';

export interface LooksProps {
  readonly looks: readonly (readonly [what: string, how: string])[];
  readonly numbered?: boolean;
}

/** Things to look at, each with what to look for; numbered where the order counts. */
export const Looks = ({ looks, numbered = false }: LooksProps) => (
  <ol className={numbered ? 'looks looks-numbered' : 'looks'}>
    {looks.map(([what, how]) => (
      <li key={what}>
        <b>{what}</b> {how}
      </li>
    ))}
  </ol>
);
