package withers.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import withers.contacts.Agreement;
import withers.contacts.Field;
import withers.custody.Cast;
import withers.custody.Tenure;
import withers.finding.Finding;
import withers.finding.Who;
import withers.registration.LiveRegistration;
import withers.rule.Dossier;

/**
 * How registered contacts compare with the custodian and with each other, field by field.
 *
 * @param strays registrations of other numbers that may be meant for the animal
 */
record ContactLines(Dossier dossier, List<Finding.Registration> strays, Naming naming) {

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    List<LiveRegistration> live = dossier.live();
    Optional<Who> custodian = dossier.custodian().map(Tenure::who);
    for (int i = 0; i < live.size(); i++) {
      Who primary = live.get(i).primary();
      custodian.ifPresent(who -> lines.add(line(who, primary)));
      dossier.keeper().ifPresent(keeper -> lines.add(versions(keeper.versions().verdict(primary))));
      live.subList(i + 1, live.size()).forEach(other -> lines.add(line(primary, other.primary())));
    }
    strays.forEach(stray -> custodian.ifPresent(who -> lines.add(stray(stray, who))));
    return lines.stream().distinct().toList();
  }

  private String stray(Finding.Registration stray, Who custodian) {
    return "%s, by the registration of %s with %s"
        .formatted(
            line(custodian, stray.primary()), stray.chip().display(), naming.of(stray.registry()));
  }

  private String line(Who one, Who other) {
    Cast cast = dossier.cast();
    return "%s and %s: %s%s"
        .formatted(
            naming.of(one),
            naming.of(other),
            words(cast.verdict(one, other)),
            fields(cast.people().fields(one, other)));
  }

  private static String fields(Map<Field, Agreement> fields) {
    return fields.isEmpty()
        ? ""
        : fields.entrySet().stream()
            .map(field -> "%s %s".formatted(field.getKey().word(), words(field.getValue())))
            .collect(Collectors.joining(", ", " (", ")"));
  }

  private String versions(Enum<?> verdict) {
    return "  the best verdict over all versions of the keeper: " + words(verdict);
  }

  private static String words(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
