import QRCode from 'qrcode';

const QUIET = 4;

/** A text as a QR code: dark on white whatever the colours of the page, since cameras expect it so. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }): JSX.Element {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' });
  const side = modules.size + 2 * QUIET;
  const cells = Array.from(modules.data, (dark, index) => ({ dark, index }))
    .filter(({ dark }) => dark !== 0)
    .map(
      ({ index }) => `M${QUIET + (index % modules.size)} ${QUIET + Math.floor(index / modules.size)}h1v1h-1z`,
    );
  return (
    <svg
      class="qr"
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label={label}
      shape-rendering="crispEdges"
    >
      <rect width={String(side)} height={String(side)} fill="#fff" />
      <path d={cells.join('')} fill="#000" />
    </svg>
  );
}
