package withers.report.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import withers.audit.Erased;
import withers.audit.Readmitted;
import withers.cli.Console;
import withers.cli.ExitCode;
import withers.cli.Operator;
import withers.cli.WorkspaceOption;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;

/** Lets somebody in again who was forgotten. */
@Command(
    name = "readmit",
    mixinStandardHelpOptions = true,
    description = {
      "Lets somebody in again who was forgotten, has come back, and agrees to be held. Shows who is kept",
      "out, by references and records, as no details are left, and asks which of them it is. What is held",
      "is read from the next exports that state it; until then nothing is made of the gap."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  withers readmit --by \"privacy officer\" --reason \"a client again, agreed in writing\"",
      "  withers readmit --by coordinator --reason \"agreed in writing\" \\",
      "      --yes 01:00112233445566778899aabbccddeeff"
    })
public final class ReadmitCommand implements Callable<Integer> {
  private final Console console;
  private final Operator operator;

  @Spec private @Nullable CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WhoAndWhy said;

  @Option(
      names = "--yes",
      paramLabel = "REFERENCE",
      split = ",",
      description = "Let these in without asking, with all that was forgotten together with them.")
  private List<String> agreed = List.of();

  ReadmitCommand(Console console, Operator operator) {
    this.console = console;
    this.operator = operator;
  }

  @Override
  public Integer call() {
    var workspace = workspaceOption.open();
    SettleText text = new SettleText(workspace, this::refusal);
    Readmission readmission =
        new Readmission(workspace, text.role(said.role()), text.reason(said.reason()));
    Set<ContactRef> named = Choice.named(agreed, this::refusal);
    List<Erased> standing = readmission.standing();
    if (standing.isEmpty()) {
      console.say("Nobody is kept out.");
      return ExitCode.ATTENTION.number();
    }
    Set<Erased> chosen = named.isEmpty() ? asked(standing) : having(standing, named);
    if (chosen.isEmpty()) {
      console.say("Nobody was let in.");
      return ExitCode.DONE.number();
    }
    tell(readmission.readmit(chosen), chosen);
    return ExitCode.DONE.number();
  }

  private Set<Erased> having(List<Erased> standing, Set<ContactRef> named) {
    Set<Erased> chosen =
        standing.stream()
            .filter(one -> one.references().stream().anyMatch(named::contains))
            .collect(Collectors.toCollection(LinkedHashSet::new));
    Set<ContactRef> found =
        chosen.stream().flatMap(one -> one.references().stream()).collect(Collectors.toSet());
    if (!found.containsAll(named)) {
      throw refusal(
          "Expected references that are kept out, but found others: run it without these to see them; nobody was let in");
    }
    return chosen;
  }

  private Set<Erased> asked(List<Erased> standing) {
    for (int i = 0; i < standing.size(); i++) {
      lines(i + 1, standing.get(i)).forEach(console::print);
    }
    console.say(
        "Which of them has come back? Numbers with blanks between; nothing to leave it. Their own letter should say so.");
    String answer = operator.answer().orElseThrow(this::nobodyToAsk).strip();
    Set<Erased> chosen = new LinkedHashSet<>();
    if (!answer.isEmpty()) {
      for (String number : answer.split("[\\s,]+")) {
        chosen.add(numbered(number, standing));
      }
    }
    return chosen;
  }

  private Erased numbered(String number, List<Erased> standing) {
    boolean isOne = number.matches("[1-9][0-9]{0,5}");
    if (!isOne || Integer.parseInt(number) > standing.size()) {
      throw refusal(
          "Expected numbers from 1 to %d, but found something else: nobody was let in"
              .formatted(standing.size()));
    }
    return standing.get(Integer.parseInt(number) - 1);
  }

  private static List<String> lines(int number, Erased one) {
    List<String> lines = new ArrayList<>();
    lines.add("%d  forgotten on %s by %s: %s".formatted(number, one.on(), one.by(), one.reason()));
    one.references().forEach(reference -> lines.add("   reference " + reference));
    one.records().forEach(record -> lines.add("   record " + shown(record)));
    return lines;
  }

  private static String shown(RecordName record) {
    return record.source().value() + " " + record.key().value();
  }

  private void tell(Readmitted readmitted, Set<Erased> chosen) {
    console.print(
        "Let in again: %d contacts and %d records. The next exports are read whole, and what they state of them is held again."
            .formatted(readmitted.references().size(), readmitted.records().size()));
    chosen.stream()
        .flatMap(one -> one.records().stream())
        .filter(record -> !readmitted.records().contains(record))
        .distinct()
        .forEach(
            record ->
                console.print(
                    "Still kept out, for somebody else who was forgotten: record %s."
                        .formatted(shown(record))));
  }

  private ParameterException nobodyToAsk() {
    return refusal(
        "Expected somebody at the terminal, but found nobody to ask: give --yes with references; nobody was let in");
  }

  private ParameterException refusal(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }
}
