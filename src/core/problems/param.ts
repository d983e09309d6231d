/** What a problem's parameter may be: a figure, words, one of a few names; or one of these, where it can be said. */
export const figure = 'figure';
export const text = 'text';

export interface OneOf<Name extends string> {
  readonly oneOf: readonly Name[];
}

export interface Maybe<Given extends ParamKind> {
  readonly maybe: Given;
}

export type ParamKind = typeof figure | typeof text | OneOf<string>;

export const oneOf = <const Name extends string>(names: readonly Name[]): OneOf<Name> => ({
  oneOf: names,
});

export const maybe = <Given extends ParamKind>(given: Given): Maybe<Given> => ({ maybe: given });

type ParamSpec = Readonly<Record<string, ParamKind | Maybe<ParamKind>>>;

/** The problems of one area: each code with what it carries. */
export type ProblemList = Readonly<Record<string, ParamSpec>>;

/** The codes of a list. */
export const codesIn = <List extends ProblemList>(list: List): readonly (keyof List & string)[] =>
  Object.keys(list);

type Value<Kind> = Kind extends typeof figure
  ? number
  : Kind extends typeof text
    ? string
    : Kind extends OneOf<infer Name>
      ? Name
      : Kind extends Maybe<infer Given>
        ? Value<Given>
        : never;

type MaybeNames<Spec> = {
  [Name in keyof Spec]: Spec[Name] extends Maybe<ParamKind> ? Name : never;
}[keyof Spec];

/** What a problem with this specification carries; one that carries nothing takes nothing. */
export type ParamsIn<Spec> = [keyof Spec] extends [never]
  ? Readonly<Record<string, never>>
  : [MaybeNames<Spec>] extends [never]
    ? { readonly [Name in keyof Spec]: Value<Spec[Name]> }
    : { readonly [Name in Exclude<keyof Spec, MaybeNames<Spec>>]: Value<Spec[Name]> } & {
        readonly [Name in MaybeNames<Spec>]?: Value<Spec[Name]>;
      };

/** What a sentence may use of it: figures as they are shown. */
export type ShownIn<Spec> = {
  readonly [Name in Exclude<keyof Spec, MaybeNames<Spec>>]: Shown<Value<Spec[Name]>>;
} & { readonly [Name in MaybeNames<Spec>]?: Shown<Value<Spec[Name]>> };

type Shown<Given> = Given extends number ? string : Given;
