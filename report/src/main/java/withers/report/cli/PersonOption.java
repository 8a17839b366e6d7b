package withers.report.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.cli.Operator;
import withers.contact.Contact;
import withers.report.privacy.PersonFile;

/**
 * Whom a request is about. Details are never options of their own: command lines are kept in the
 * shell's history and shown in lists of processes. Use as a mixin.
 */
final class PersonOption {

  @Option(
      names = "--person",
      paramLabel = "FILE",
      description = {
        "A YAML file with what the person gave: name, phones, emails, address, postcode, town.",
        "Delete it afterwards. Default: you are asked at the terminal."
      })
  private @Nullable Path file;

  private final Console console;
  private final Operator operator;

  PersonOption(Console console, Operator operator) {
    this.console = console;
    this.operator = operator;
  }

  /**
   * The person; empty when there is neither a file nor anybody to ask.
   *
   * @throws withers.yaml.ConfigException with all mistakes of the file
   */
  Optional<Contact> read() {
    return file == null ? asked() : Optional.of(read(file));
  }

  /**
   * The person whom a file describes.
   *
   * @throws withers.yaml.ConfigException with all mistakes of the file
   */
  static Contact read(Path file) {
    return PersonFile.read(text(file));
  }

  private static String text(Path file) {
    try {
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is not known is left empty. */
  private Optional<Contact> asked() {
    Optional<String> name = ask("Name (leave empty what you don't know):");
    return name.map(
        typed ->
            new Contact(
                typed,
                "",
                "",
                List.of(answer("Phone:")),
                List.of(answer("E-mail:")),
                List.of(answer("Street and number:")),
                answer("Postcode:"),
                answer("Town:"),
                "",
                ""));
  }

  private String answer(String question) {
    return ask(question).orElse("");
  }

  private Optional<String> ask(String question) {
    console.say(question);
    return operator.answer();
  }
}
