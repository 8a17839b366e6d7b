package withers.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import withers.contact.ContactRef;
import withers.custody.Cast;
import withers.custody.Tenure;
import withers.finding.Finding;
import withers.finding.Who;
import withers.matching.Verdict;
import withers.matching.Weighing;
import withers.registration.LiveRegistration;
import withers.rule.Dossier;

/**
 * How registered contacts compare with the custodian and with each other, trait by trait.
 *
 * @param strays registrations of other numbers that may be meant for the animal
 */
record ContactLines(Dossier dossier, List<Finding.Registration> strays, Naming naming) {
  private static final String SETTLED = ", as a person settled it; by their details alone:";

  List<String> lines() {
    List<List<String>> pairs = new ArrayList<>(ofRegistrations());
    strays.forEach(
        stray -> custodian(stray.primary()).ifPresent(who -> pairs.add(stray(stray, who))));
    return pairs.stream().distinct().flatMap(List::stream).toList();
  }

  private List<List<String>> ofRegistrations() {
    List<List<String>> pairs = new ArrayList<>();
    List<LiveRegistration> live = dossier.live();
    for (int i = 0; i < live.size(); i++) {
      Who primary = live.get(i).primary();
      custodian(primary).ifPresent(who -> pairs.add(lines(who, primary, "")));
      live.subList(i + 1, live.size())
          .forEach(other -> pairs.add(lines(primary, other.primary(), "")));
    }
    return pairs;
  }

  private List<String> stray(Finding.Registration stray, Who custodian) {
    String by =
        ", by the registration of %s with %s"
            .formatted(stray.chip().display(), naming.of(stray.registry()));
    return lines(custodian, stray.primary(), by);
  }

  /** Of a keeper the version that comes closest: by it the rules judge. */
  private Optional<Who> custodian(Who primary) {
    return dossier
        .keeper()
        .map(keeper -> keeper.versions().closest(primary).who())
        .or(() -> dossier.custodian().map(Tenure::who));
  }

  private List<String> lines(Who one, Who other, String by) {
    Cast cast = dossier.cast();
    Verdict verdict = cast.verdict(one, other);
    Optional<Weighing> weighing =
        isOneContact(one, other) ? Optional.empty() : cast.people().weigh(one, other);
    List<String> lines = new ArrayList<>();
    lines.add(
        "%s and %s: %s%s%s"
            .formatted(
                naming.of(one),
                naming.of(other),
                words(verdict),
                by,
                weighing.filter(w -> w.verdict() != verdict).map(w -> SETTLED).orElse("")));
    weighing.map(Waterfall::lines).ifPresent(lines::addAll);
    return lines;
  }

  /** Equal in every field, so that there is nothing to weigh. */
  private static boolean isOneContact(Who one, Who other) {
    Optional<ContactRef> reference = one.person().map(Who.Person::reference);
    return reference.isPresent() && reference.equals(other.person().map(Who.Person::reference));
  }

  private static String words(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
