package withers.report.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.ParameterException;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.cli.Typed;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.report.text.OneLine;
import withers.settling.Answer;
import withers.workspace.Workspace;
import withers.yaml.Nearest;

/**
 * What somebody settles, as people type it.
 *
 * @param refusal what is thrown when it can't be read, with a message
 */
record SettleText(Workspace workspace, Function<String, ParameterException> refusal) {

  /** Follow-ups that a message names; more would help nobody. */
  private static final int MOST_NAMED = 5;

  private Typed typed() {
    return new Typed(refusal);
  }

  Answer answer(String text) {
    return typed().choice("--as", Answer.class, text);
  }

  String role(String text) {
    return typed().role(text);
  }

  String reason(String text) {
    return typed().reason(OneLine.of(text));
  }

  LocalDate day(Optional<LocalDate> given) {
    return typed().day(given, workspace.today(), "it was found out");
  }

  Optional<LocalDate> until(LocalDate day, Optional<LocalDate> given) {
    if (given.filter(day::isAfter).isPresent()) {
      throw refusal.apply(
          "Expected --until with the last day on which it holds, from %s, but found %s"
              .formatted(day, given.get()));
    }
    return given;
  }

  OrganisationId registry(String id) {
    List<String> ids =
        workspace.directory().registries().stream()
            .map(Organisation::id)
            .map(OrganisationId::value)
            .toList();
    if (ids.contains(id)) {
      return new OrganisationId(id);
    }
    String fix = Nearest.to(id, ids).map("did you mean \"%s\"?"::formatted).orElse("see that file");
    throw refusal.apply(
        "Expected --registry with the id of a registry in organisations.yaml, but found \"%s\": %s"
            .formatted(id, fix));
  }

  /** The one that is meant. */
  CaseKey one(List<CaseKey> found, String run) {
    if (found.isEmpty()) {
      throw refusal.apply(
          "Expected a follow-up that run %s tells of, but found no such: give the reference as a list shows it, or the number and the kind"
              .formatted(run));
    }
    if (found.size() > 1) {
      throw refusal.apply(
          "Expected one follow-up, but found %d: give the reference of one, such as %s"
              .formatted(
                  found.size(),
                  found.stream()
                      .limit(MOST_NAMED)
                      .map(key -> "%s (%s)".formatted(Reference.of(key), key.rule()))
                      .collect(Collectors.joining(", "))));
    }
    return found.get(0);
  }

  /** A follow-up, by its reference and what it is about. */
  static String named(CaseKey key) {
    return "%s, %s of %s".formatted(Reference.of(key), key.rule(), key.anchor().display());
  }
}
