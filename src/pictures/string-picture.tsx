import type { JSX } from 'preact';
import './drawing.css';
import { Rope } from './rope.tsx';

/** A bale seen from its left side, travelling to the left, with the failed string on it and its two ends told apart. */
export function StringPicture(): JSX.Element {
  return (
    <svg
      class="drawing"
      viewBox="0 0 440 340"
      role="img"
      aria-label="A bale from its left side. One end of the failed string lies along the top of the bale: the top end. The other came up the front, which is on the left: the front end."
    >
      <g class="shape">
        <path class="shade" d="M96 96H420V300H96Z" />
        <path
          class="line"
          stroke-width="2"
          d="M130 130 180 150M150 240 220 224M240 130 300 146M260 260 330 240M340 140 390 160M350 280 400 262M180 190 240 196M300 196 360 204"
        />
        <Rope path="M132 86H430V310H86V140" />
        <circle class="bare-end" cx="132" cy="86" r="13" />
        <circle class="bare-end" cx="86" cy="140" r="13" />
        <path class="line" stroke-width="6" d="M60 320H14M14 320 30 308M14 320 30 332" />
      </g>
      <g class="end-names">
        <text x="150" y="62">
          top end
        </text>
        <text x="0" y="206">
          front
        </text>
        <text x="0" y="240">
          end
        </text>
      </g>
    </svg>
  );
}
