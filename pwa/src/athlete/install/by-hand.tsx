import type { ComponentChildren } from "preact";

/** Where the browser has no offer of its own: drawn in its usual signs, with nobody's logo. */
export function ByHand({ coach }: { readonly coach: string }) {
  if (!isApple(navigator)) {
    return (
      <ol class="signs">
        <Step sign={<path d="M12 5v.1M12 12v.1M12 19v.1" />}>Open the browser's menu.</Step>
        <Step sign={<path d="M6 3h12v18H6zM12 8v8M8 12h8" />}>
          Choose “Install” or “Add to home screen”.
        </Step>
      </ol>
    );
  }
  return (
    <>
      <ol class="signs">
        <Step sign={<path d="M12 15V3M8 7l4-4 4 4M7 11H5v10h14V11h-2" />}>
          Tap the sign for sharing.
        </Step>
        <Step sign={<path d="M4 4h16v16H4zM12 8v8M8 12h8" />}>Choose “Add to Home Screen”.</Step>
        <Step sign={<path d="M6 5h12v14H6zM9 15h6" />}>
          Open it there, and type a new code from {coach}: the installed app does not share this
          log-in.
        </Step>
      </ol>
      <p class="small">First send what is unsent from here; it does not move by itself.</p>
    </>
  );
}

interface StepProps {
  readonly sign: ComponentChildren;
  readonly children: ComponentChildren;
}

function Step({ sign, children }: StepProps) {
  return (
    <li>
      <svg class="sign" viewBox="0 0 24 24" aria-hidden="true">
        {sign}
      </svg>
      <span>{children}</span>
    </li>
  );
}

/** A tablet of this family says it is a desktop computer; only it has a touch screen. */
function isApple({ userAgent, maxTouchPoints }: Navigator): boolean {
  return /iPhone|iPad|iPod/.test(userAgent) || (/Macintosh/.test(userAgent) && maxTouchPoints > 1);
}
