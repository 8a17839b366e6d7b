package withers.rule;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.fact.Fact;
import withers.fact.Species;
import withers.history.Statement;
import withers.id.OrganisationId;

/** How records describe an animal, for people to recognise it. */
record Looks(Dossier dossier) {

  Species species() {
    return latest(described -> described.species() != Species.UNSTATED, statement -> true)
        .map(Fact.Described::species)
        .orElse(Species.UNSTATED);
  }

  /** In the records of this organisation, else in anybody's. */
  Optional<String> name(OrganisationId actor) {
    Predicate<Fact.Described> named = described -> described.name().isPresent();
    return latest(named, statement -> dossier.cast().organisation(statement).equals(actor))
        .or(() -> latest(named, statement -> true))
        .flatMap(Fact.Described::name);
  }

  /** The description that was first stated last. */
  private Optional<Fact.Described> latest(
      Predicate<Fact.Described> wanted, Predicate<Statement> from) {
    Stream<Statement> described =
        dossier
            .animal()
            .stating(Fact.Described.class)
            .filter(from)
            .filter(s -> wanted.test(fact(s)));
    return described.max(LAST_STATED).map(Looks::fact);
  }

  private static Fact.Described fact(Statement statement) {
    return (Fact.Described) statement.fact();
  }

  private static final Comparator<Statement> LAST_STATED =
      Comparator.comparing(Statement::firstStated).thenComparing(Statement.BY_DAY);
}
