package withers.rule;

/** What a glance says of an animal. */
public enum Sight {
  /** No rule has anything to say. */
  CLEAR,
  /** The same, of a number that only registries speak of: it may be meant for another animal. */
  STRAY,
  /** The rules have to be asked. */
  UNSURE
}
