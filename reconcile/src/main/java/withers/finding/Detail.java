package withers.finding;

/** What only findings about a record have to tell, by their kind. */
public sealed interface Detail permits Damage, Stock {}
