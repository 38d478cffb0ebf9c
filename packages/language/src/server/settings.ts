import { type ConfigurationInitializedParams, DefaultConfigurationProvider } from 'langium';
import type { InitializeParams } from 'vscode-languageserver-protocol';
import { type Severities, WANTED_SEVERITIES, type WantedSeverity } from '../findings/severity.js';

/** What a reader of hints and hovers, and a house with its own rules, may set; the section `dryfit` of a client. */
export interface Settings {
  /** Whether sizes are worked from measured or from nominal thickness. */
  readonly thickness: 'measured' | 'nominal';
  /** Whether cabinets are worked out at all; without, only the text is checked. */
  readonly joinery: boolean;
  /** Severity of a check's findings, by the check's name. */
  readonly severity: Severities;
  readonly hints: { readonly sizes: boolean; readonly spacers: boolean; readonly slotCounts: boolean };
  readonly lenses: boolean;
  readonly hoverDrawing: boolean;
}

export const DEFAULTS: Settings = {
  thickness: 'measured',
  joinery: true,
  severity: {},
  hints: { sizes: true, spacers: true, slotCounts: true },
  lenses: true,
  hoverDrawing: true,
};

const SECTION = 'dryfit';

/**
 * The client's settings as they stand: sent with its first message (`initializationOptions.dryfit`), read when it is
 * ready, and whenever it says that they changed. Whatever a client leaves out or gets wrong has its default.
 */
export class ClientSettings extends DefaultConfigurationProvider {
  private current = DEFAULTS;
  private showsPages = false;
  private tellsOfChanges = false;
  private laterAt: string | undefined;
  private readonly listeners: ((now: Settings, before: Settings) => void)[] = [];

  get now(): Settings {
    return this.current;
  }

  /** The client has said that it can show the page of a check. */
  get clientShowsPages(): boolean {
    return this.showsPages;
  }

  /** Address, with its last slash, of what a server in a browser loads late; only its client knows it. */
  get later(): string | undefined {
    return this.laterAt;
  }

  /** Calls back after each change, with the settings before it. */
  onChange(listener: (now: Settings, before: Settings) => void): void {
    this.listeners.push(listener);
  }

  override initialize(params: InitializeParams): void {
    super.initialize(params);
    this.tellsOfChanges = params.capabilities.workspace?.didChangeConfiguration?.dynamicRegistration ?? false;
    const options: unknown = params.initializationOptions;
    if (typeof options !== 'object' || options === null || !(SECTION in options)) return;
    const own = options[SECTION];
    this.showsPages = typeof own === 'object' && own !== null && 'checkPages' in own && own.checkPages === true;
    if (typeof own === 'object' && own !== null && 'later' in own && typeof own.later === 'string')
      this.laterAt = own.later;
    this.take(own);
  }

  /** Asks to be told of changes only a client that can be asked; the others tell unasked, or never. */
  override async initialized({ register, ...params }: ConfigurationInitializedParams): Promise<void> {
    await super.initialized(this.tellsOfChanges && register ? { ...params, register } : params);
  }

  protected override toSectionName(): string {
    return SECTION;
  }

  protected override updateSectionConfiguration(section: string, configuration: unknown): void {
    super.updateSectionConfiguration(section, configuration);
    // A client without such a section has none to say; what it said when it started holds.
    if (section === SECTION && configuration != null) this.take(configuration);
  }

  private take(given: unknown): void {
    const before = this.current;
    this.current = readSettings(given);
    if (JSON.stringify(this.current) === JSON.stringify(before)) return;
    for (const listener of this.listeners) listener(this.current, before);
  }
}

/** Settings out of whatever a client has sent. */
export function readSettings(given: unknown): Settings {
  const of = (value: unknown): Record<string, unknown> =>
    typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  const flag = (value: unknown, otherwise: boolean) => (typeof value === 'boolean' ? value : otherwise);
  const all = of(given);
  const hints = of(all.hints);
  return {
    thickness: all.thickness === 'nominal' ? 'nominal' : DEFAULTS.thickness,
    joinery: flag(all.joinery, DEFAULTS.joinery),
    severity: Object.fromEntries(
      Object.entries(of(all.severity)).filter((entry): entry is [string, WantedSeverity] =>
        (WANTED_SEVERITIES as readonly unknown[]).includes(entry[1]),
      ),
    ),
    hints: {
      sizes: flag(hints.sizes, DEFAULTS.hints.sizes),
      spacers: flag(hints.spacers, DEFAULTS.hints.spacers),
      slotCounts: flag(hints.slotCounts, DEFAULTS.hints.slotCounts),
    },
    lenses: flag(all.lenses, DEFAULTS.lenses),
    hoverDrawing: flag(all.hoverDrawing, DEFAULTS.hoverDrawing),
  };
}
