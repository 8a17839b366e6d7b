package withers.ingest.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import picocli.CommandLine.ParameterException;
import withers.chip.ChipNumber;
import withers.chip.ChipNumberReader;
import withers.chip.Reading;
import withers.cli.Typed;
import withers.fact.LookUpAnswer;
import withers.id.OrganisationId;
import withers.ingest.lookup.KnownBefore;
import withers.ingest.lookup.LookUp;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.workspace.Workspace;
import withers.yaml.Choices;
import withers.yaml.Nearest;

/**
 * A look-up as people type it and read it.
 *
 * @param refusal what is thrown when it can't be read, with a message
 */
record LookUpText(Workspace workspace, Function<String, ParameterException> refusal) {

  ChipNumber number(String text) {
    Reading reading = new ChipNumberReader(workspace.settings().acceptsTestNumbers()).read(text);
    if (reading instanceof Reading.Accepted accepted) {
      return accepted.number();
    }
    if (reading instanceof Reading.Tentative tentative) {
      return tentative.number();
    }
    throw refusal.apply(
        reading instanceof Reading.Refused refused
            ? refused.message()
            : "Expected a chip number that needs no guessing, but found \"%s\": give all its digits as they were looked up"
                .formatted(text));
  }

  Organisation registry(String idOrName) {
    Directory directory = workspace.directory();
    Organisation found =
        byId(idOrName, directory)
            .or(() -> directory.named(idOrName))
            .orElseThrow(() -> unknown(idOrName));
    if (found.kind() != OrganisationKind.REGISTRY) {
      throw refusal.apply(
          "Expected a registry, but found %s, which is a %s by organisations.yaml: name the registry that was asked"
              .formatted(found.id(), Choices.name(found.kind())));
    }
    return found;
  }

  private static Optional<Organisation> byId(String text, Directory directory) {
    return directory.all().stream().filter(one -> one.id().value().equals(text)).findFirst();
  }

  private ParameterException unknown(String idOrName) {
    List<Organisation> registries = workspace.directory().registries();
    Stream<String> ids = registries.stream().map(Organisation::id).map(OrganisationId::value);
    Stream<String> names = registries.stream().map(Organisation::name);
    String fix =
        Nearest.to(idOrName, Stream.concat(ids, names).toList())
            .map("did you mean \"%s\"?"::formatted)
            .orElse("add it to organisations.yaml as a registry, or name another");
    return refusal.apply(
        "Expected a registry of organisations.yaml, but found \"%s\": %s".formatted(idOrName, fix));
  }

  LookUpAnswer answer(String text) {
    return typed().choice("--answer", LookUpAnswer.class, text);
  }

  LocalDate day(Optional<LocalDate> given) {
    return typed().day(given, workspace.today(), "the registry was asked");
  }

  String role(String text) {
    return typed().role(text);
  }

  private Typed typed() {
    return new Typed(refusal);
  }

  static String words(LookUpAnswer answer) {
    return Choices.name(answer).replace('-', ' ');
  }

  static String sentence(LookUp lookUp) {
    return "%s answered on %s that %s is %s."
        .formatted(lookUp.registry(), lookUp.day(), lookUp.chip(), words(lookUp.answer()));
  }

  /** What somebody should look at, though it was recorded. */
  static List<String> doubts(
      LookUp lookUp, KnownBefore before, Directory directory, Organisation asked) {
    List<String> doubts = new ArrayList<>();
    if (!before.isSpokenOf()) {
      doubts.add("No record speaks of %s: see that the number is right.".formatted(lookUp.chip()));
    }
    if (!directory.registriesFor(lookUp.chip()).contains(asked)) {
      doubts.add(
          "%s is not among the numbers that %s may hold by organisations.yaml: see that both are right."
              .formatted(lookUp.chip(), asked.name()));
    }
    return doubts;
  }
}
