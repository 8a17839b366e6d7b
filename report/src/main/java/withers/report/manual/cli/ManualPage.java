package withers.report.manual.cli;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import withers.cli.ExitCode;

/** The manual page of one command: what {@code --help} says, and how it may end. */
final class ManualPage {
  private final CommandSpec command;
  private final Help help;
  private final Troff page = new Troff();

  ManualPage(CommandLine line) {
    this.command = line.getCommandSpec();
    this.help = new Help(command, Help.defaultColorScheme(Ansi.OFF));
  }

  /** The page's name, as {@code man} is asked for it. */
  String name() {
    return name(command);
  }

  private static String name(CommandSpec command) {
    return command.qualifiedName("-");
  }

  /** The page as {@code man} reads it. It tells no day: the same program has the same pages. */
  String text() {
    page.macro("TH", name().toUpperCase(Locale.ROOT), "1", "", version(), "Withers");
    page.macro("SH", "NAME").text(name() + " - " + firstSentence(command));
    page.macro("SH", "SYNOPSIS").text(help.synopsis(0));
    page.macro("SH", "DESCRIPTION").text(description(command));
    arguments();
    commands();
    example();
    exitCodes();
    seeAlso();
    return page.toString();
  }

  private String version() {
    return String.join(" ", command.version());
  }

  private static String description(CommandSpec command) {
    return words(command.usageMessage().description());
  }

  private static String firstSentence(CommandSpec command) {
    return description(command).replaceFirst("(?s)[.:] .*|\\.$", "");
  }

  private void arguments() {
    page.macro("SH", "OPTIONS");
    command.positionalParameters().forEach(argument -> argument(label(argument), argument));
    command.options().stream()
        .filter(option -> !option.hidden())
        .sorted(Comparator.comparing(OptionSpec::longestName))
        .forEach(option -> argument(names(option) + label(option), option));
  }

  private void argument(String shown, ArgSpec argument) {
    page.macro("TP").macro("B", shown).text(words(argument.description()));
  }

  private static String names(OptionSpec option) {
    return Arrays.stream(option.names())
        .sorted(Comparator.comparing(String::length))
        .collect(Collectors.joining(", "));
  }

  private String label(ArgSpec argument) {
    return help.parameterLabelRenderer()
        .renderParameterLabel(argument, Ansi.OFF, List.of())
        .toString();
  }

  private void commands() {
    if (command.subcommands().isEmpty()) {
      return;
    }
    page.macro("SH", "COMMANDS");
    for (CommandSpec inner : subcommands()) {
      page.macro("TP").macro("BR", name(inner), "(1)").text(firstSentence(inner) + ".");
    }
  }

  private List<CommandSpec> subcommands() {
    Collection<CommandLine> lines = command.subcommands().values();
    return lines.stream().map(CommandLine::getCommandSpec).toList();
  }

  private void example() {
    String[] lines = command.usageMessage().footer();
    if (lines.length > 0) {
      page.macro("SH", "EXAMPLES").macro("nf");
      Arrays.stream(lines).map(ManualPage::formatted).forEach(page::literal);
      page.macro("fi");
    }
  }

  private void exitCodes() {
    page.macro("SH", "EXIT STATUS");
    for (ExitCode code : ExitCode.values()) {
      page.macro("TP").macro("B", String.valueOf(code.number())).text(code.meaning());
    }
  }

  private void seeAlso() {
    page.macro("SH", "SEE ALSO");
    CommandSpec parent = command.parent() == null ? command : command.parent();
    page.text(
        parent == command
            ? "The folder docs beside the program, docs/first-hour.md first."
            : name(parent) + "(1)");
  }

  private static String words(String... lines) {
    return Arrays.stream(lines).map(ManualPage::formatted).collect(Collectors.joining(" "));
  }

  /** Picocli's texts are formats, for the sake of line breaks. */
  private static String formatted(String line) {
    return String.format(Locale.ROOT, line);
  }
}
