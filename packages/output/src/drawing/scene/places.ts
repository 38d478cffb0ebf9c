import type {
  Connect,
  Fact,
  FitResult,
  JointStatement,
  PartId,
  PlaneRef,
  Source,
  Spec,
  Statement,
} from '@dryfit/engine';

/** Where the text of everything drawn stands. */
export interface Places {
  /** Its declaration, every statement that places or names it, and its material. */
  part(id: PartId): readonly Source[];
  /** The statement, then the declarations of the parts. */
  statement(source: Source, parts: readonly PartId[]): readonly Source[];
  /** As of the statement; then what says which connectors it takes and where, if they are asked for. */
  slot(statement: string, source: Source, parts: readonly PartId[]): readonly Source[];
}

export function placesOf({ spec }: FitResult): Places {
  const declared = new Map(spec.parts.map((part) => [part.id, part]));
  const naming = new Map<PartId, Source[]>();
  const statements = new Map(spec.statements.map((statement) => [statement.id, statement]));
  for (const statement of spec.statements) {
    for (const part of new Set(namedBy(statement))) {
      const known = naming.get(part);
      if (known) known.push(statement.source);
      else naming.set(part, [statement.source]);
    }
  }
  const declarations = (parts: readonly PartId[]) => parts.flatMap((id) => declared.get(id)?.source ?? []);
  const base = (source: Source, parts: readonly PartId[]) => [source, ...declarations(parts)];
  return {
    part: (id) => {
      const part = declared.get(id);
      const material = part && spec.shop.materials.get(part.material)?.source;
      return once([...declarations([id]), ...(naming.get(id) ?? []), ...(material ? [material] : [])]);
    },
    statement: (source, parts) => once(base(source, parts)),
    slot: (id, source, parts) => {
      const statement = statements.get(id);
      return once([...base(source, parts), ...(statement?.kind === 'joint' ? connectorSources(spec, statement) : [])]);
    },
  };
}

/** The fact that asks for connectors, and the shop's entries it draws on. */
function connectorSources(spec: Spec, statement: JointStatement): readonly Source[] {
  const connect: Connect | undefined = statement.connect ?? spec.connect;
  if (connect?.kind !== 'by') return [];
  const connector = spec.shop.connectors.get(connect.connector)?.source;
  const pattern = typeof connect.pattern === 'string' ? spec.shop.patterns.get(connect.pattern)?.source : undefined;
  return [connect.source, pattern, connector].filter((source) => source !== undefined);
}

/** Every part a statement speaks of, as often as it does. */
function namedBy(statement: Statement): readonly PartId[] {
  switch (statement.kind) {
    case 'dimension': {
      const { form } = statement;
      if (form.kind === 'of') return form.parts;
      return form.kind === 'from' ? [form.from.part, form.to.part] : [form.low, form.high];
    }
    case 'joint':
      return [
        ...statement.entering,
        ...statement.between.flatMap(({ low, high }) => [low.part, high.part]),
        ...statement.to.map(({ part }) => part),
        ...statement.facts.flatMap(namedByFact),
        ...(statement.datum?.plane ? [statement.datum.plane.part] : []),
      ];
    case 'placing':
      return [...statement.parts, ...namedByFact(statement.fact)];
    case 'notch':
    case 'cant':
    case 'band':
    case 'load':
      return statement.parts;
    case 'moisture':
      return [];
  }
}

function namedByFact(fact: Fact): readonly PartId[] {
  const of = (...planes: readonly PlaneRef[]) => planes.map(({ part }) => part);
  if (fact.kind === 'flush') return [];
  if (fact.kind === 'centred') return [fact.low, fact.high];
  return fact.kind === 'openings' ? of(fact.low, fact.high) : of(fact.plane);
}

/** Each place once, where it came first. */
function once(sources: readonly Source[]): readonly Source[] {
  return [...new Map(sources.map((source) => [`${source.uri} ${source.start} ${source.end}`, source])).values()];
}
