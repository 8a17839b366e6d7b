package withers.rule;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import withers.codec.StatementDigest;
import withers.contacts.AnimalNames;
import withers.fact.Fact;
import withers.fact.Species;
import withers.finding.FindingKind;
import withers.history.Statement;

/** Two records of one number describe animals that can't be one. */
final class NumberOnTwoAnimals implements Rule {

  /** Days that two records' days of birth of one animal may lie apart (our judgement). */
  static final int DAYS_APART = 730;

  private static final Comparator<Statement> LAST_STATED =
      Comparator.comparing(Statement::firstStated).thenComparing(Statement.bySlot());

  @Override
  public FindingKind kind() {
    return FindingKind.NUMBER_ON_TWO_ANIMALS;
  }

  @Override
  public boolean suspendsTheRest() {
    return true;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    List<Statement> contradicting = contradicting(dossier);
    return contradicting.stream()
        .max(LAST_STATED)
        .<Judgement>map(last -> new Judgement.Holds(last, fields(last, contradicting)))
        .orElse(Judgement.CLEAR);
  }

  /** The descriptions that contradict some other one, in order. */
  static List<Statement> contradicting(Dossier dossier) {
    List<Statement> described =
        dossier.animal().stating(Fact.Described.class).filter(Statement::listed).toList();
    return described.stream()
        .filter(one -> described.stream().anyMatch(other -> contradict(one, other, dossier)))
        .toList();
  }

  private static boolean contradict(Statement one, Statement other, Dossier dossier) {
    return !differing(one, other).isEmpty() && !areOfOneAnimal(one, other, dossier);
  }

  /** Whether somebody settled that both, as they are, describe one animal. */
  private static boolean areOfOneAnimal(Statement one, Statement other, Dossier dossier) {
    Set<String> settled = dossier.cast().settlements().oneAnimal(one.chip());
    return !settled.isEmpty() && settled.contains(digest(one)) && settled.contains(digest(other));
  }

  static String digest(Statement statement) {
    return StatementDigest.of(statement.event()).toString();
  }

  private static List<String> fields(Statement last, List<Statement> contradicting) {
    return contradicting.stream()
        .flatMap(other -> differing(last, other).stream())
        .distinct()
        .sorted(Comparator.reverseOrder())
        .toList();
  }

  /** What contradicts each other in two records of one number. */
  private static List<String> differing(Statement one, Statement other) {
    List<String> fields = new ArrayList<>();
    if (one.chip().equals(other.chip()) && !isOfRecord(one, other)) {
      Fact.Described first = (Fact.Described) one.fact();
      Fact.Described second = (Fact.Described) other.fact();
      if (areOtherSpecies(first.species(), second.species())) {
        fields.add("species");
      }
      if (areBornApart(first, second) && areNamedApart(first, second)) {
        fields.add("birth");
      }
    }
    return fields;
  }

  private static boolean isOfRecord(Statement one, Statement other) {
    return one.source().equals(other.source()) && one.key().equals(other.key());
  }

  static boolean areOtherSpecies(Species one, Species other) {
    return isTold(one) && isTold(other) && one != other;
  }

  static boolean isTold(Species species) {
    return species != Species.UNSTATED && species != Species.OTHER;
  }

  private static boolean areBornApart(Fact.Described one, Fact.Described other) {
    return both(one, other, Fact.Described::born)
        .filter(days -> daysBetween(days) > DAYS_APART)
        .isPresent();
  }

  private static long daysBetween(List<LocalDate> days) {
    return Math.abs(ChronoUnit.DAYS.between(days.get(0), days.get(1)));
  }

  private static boolean areNamedApart(Fact.Described one, Fact.Described other) {
    return both(one, other, Fact.Described::name)
        .filter(names -> AnimalNames.areOthers(names.get(0), names.get(1)))
        .isPresent();
  }

  /** What both state in a field. */
  private static <T> Optional<List<T>> both(
      Fact.Described one, Fact.Described other, Function<Fact.Described, Optional<T>> field) {
    Optional<T> first = field.apply(one);
    return first.flatMap(f -> field.apply(other).map(second -> List.of(f, second)));
  }
}
