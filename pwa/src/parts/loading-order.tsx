import "./loading-order.css";
import { movesInWords, type Order } from "./order-words";

interface Props {
  readonly order: Order;
  readonly plate: (kg: number) => string;
  readonly collarKg: number;
}

/** What goes on or comes off in which order; each move stands on its side of the bar. */
export function LoadingOrder({ order, plate, collarKg }: Props) {
  return (
    <div class="loading-order">
      {order.advice && <p>{order.advice}</p>}
      <ol>
        {movesInWords(order.moves, { plate, collarKg }).map(({ side, piece }, index) => (
          <li key={index} class={`move-${side}`}>
            <span class="move-number" aria-hidden="true">
              {index + 1}
            </span>
            <span class="move-what">
              {side} <strong>{piece}</strong>
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}
