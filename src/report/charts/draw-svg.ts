import type { Loader, LoggerInterface, Spec } from 'vega';

/** A chart as text, with the words that stand for it where it cannot be seen. */
export interface Chart {
  readonly svg: string;
  readonly title: string;
  /** A text alternative with the main figures. */
  readonly description: string;
}

/**
 * Draws a Vega specification as SVG: same specification, same bytes.
 *
 * Nothing is loaded: data stand in the specification, and every file or address is refused. Any
 * warning of the drawing is an error. Times are UTC, the counter of ids starts anew, and the
 * picture is one image for a screen reader: title and description.
 *
 * @throws {Error} the specification is not drawable, warns, or asks for a file
 */
export async function drawSvg(spec: Spec, title: string, description: string): Promise<Chart> {
  const vega = await import('vega');
  const complaints: unknown[] = [];
  const view = new vega.View(vega.parse(spec), {
    renderer: 'none',
    loader: REFUSING_LOADER,
    logger: recorder(complaints),
  });
  try {
    await view.runAsync();
    vega.resetSVGDefIds();
    const svg = await view.toSVG();
    if (complaints.length > 0) throw new Error(complaints.map(String).join('; '));
    return { svg: `${announced(svg, title, description)}\n`, title, description };
  } finally {
    view.finalize();
  }
}

async function refuse(uri: string): Promise<never> {
  throw new Error(`a chart loads nothing: ${uri}`);
}

const REFUSING_LOADER: Loader = { load: refuse, sanitize: refuse, http: refuse, file: refuse };

/**
 * Collects what Vega only logs. It must not throw by itself: a load that fails would then never end.
 */
function recorder(complaints: unknown[]): LoggerInterface {
  const record = (...messages: readonly unknown[]): LoggerInterface => {
    complaints.push(...messages);
    return logger;
  };
  const ignore = (): LoggerInterface => logger;
  function level(): number;
  function level(level: number): LoggerInterface;
  function level(level?: number): number | LoggerInterface {
    return level === undefined ? 0 : logger;
  }
  const logger: LoggerInterface = {
    level,
    error: record,
    warn: record,
    info: ignore,
    debug: ignore,
  };
  return logger;
}

/** Puts role, title and description into the opening of the picture. */
function announced(svg: string, title: string, description: string): string {
  const end = svg.indexOf('>');
  const opening = svg.slice(0, end).replace(' xmlns:xlink="http://www.w3.org/1999/xlink"', '');
  const words = `<title>${escapeXml(title)}</title><desc>${escapeXml(description)}</desc>`;
  return `${opening} role="img">${words}${svg.slice(end + 1)}`;
}

/** Text for XML; what XML cannot hold at all is left out. */
function escapeXml(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}
