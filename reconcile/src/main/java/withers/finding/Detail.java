package withers.finding;

/** What only findings of some kinds have to tell. */
public sealed interface Detail permits Damage, Stock, Newer {}
