import { distinctName } from './names.ts';

/** How a student plays and holds the phone. */
export type Hands = { readonly leftHanded: boolean; readonly pair: boolean; readonly leftThumb: boolean };

/** A person as kept beside the log; events know only the random id. */
export type Person = {
  readonly student: string;
  readonly name: string;
  /** SHA-256 of the token, lower-case hex. */
  readonly tokenHash: string;
  readonly hands: Hands;
};

/** The people of one room, in order of their seats, with the names that tell them apart. */
export type People = {
  readonly byStudent: Map<string, Person>;
  readonly byToken: Map<string, string>;
  /** Names as shown: two of one name are told apart. */
  readonly shown: Map<string, string>;
  /** Keys of the names as shown, with the number that a further one of that name tries next. */
  readonly taken: Map<string, number>;
};

/** Collects people; they must come in order of their seats, so that the earlier of two keeps the plain name. */
export function peopleOf(persons: Iterable<Person>): People {
  const people: People = { byStudent: new Map(), byToken: new Map(), shown: new Map(), taken: new Map() };
  for (const person of persons) putPerson(people, person);
  return people;
}

/** Adds a person behind all others, or replaces the one of the same id where it sits; a token never changes. In place. */
export function putPerson(people: People, person: Person): void {
  const before = people.byStudent.get(person.student);
  people.byStudent.set(person.student, person);
  people.byToken.set(person.tokenHash, person.student);
  if (before === undefined) people.shown.set(person.student, distinctName(person.name, people.taken));
  else if (before.name !== person.name) nameAll(people);
}

/** A new name may free or take one that others were told apart from. */
function nameAll(people: People): void {
  people.taken.clear();
  for (const { student, name } of people.byStudent.values())
    people.shown.set(student, distinctName(name, people.taken));
}
