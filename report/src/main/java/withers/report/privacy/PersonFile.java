package withers.report.privacy;

import java.util.Optional;
import withers.contact.Contact;
import withers.yaml.Fields;
import withers.yaml.Place;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;

/** Reads whom a request is about: YAML with the keys that a carer has in the directory. */
public final class PersonFile {
  private static final String NAME = "the person's file";

  private PersonFile() {}

  /**
   * Reads the text of such a file. Messages never show what is in it.
   *
   * @throws withers.yaml.ConfigException with all its mistakes, or when it says nothing
   */
  public static Contact read(String text) {
    Problems problems = new Problems();
    Optional<Contact> read =
        YamlFiles.parse(NAME, text, problems)
            .flatMap(map -> Fields.read(map, problems, fields -> contact(fields.confidential())));
    if (read.filter(Contact::isNobody).isPresent()) {
      problems.add(
          Place.of(NAME),
          "",
          "Expected a name, phones, emails or an address, but found none",
          "write what the person gave you, such as \"phones: +1 212 555 0147\"");
    }
    problems.throwIfAny();
    return read.orElse(Contact.NOBODY);
  }

  private static Contact contact(Fields fields) {
    return new Contact(
        text(fields, "name"),
        text(fields, "given-name"),
        text(fields, "family-name"),
        fields.texts("phones"),
        fields.texts("emails"),
        fields.texts("address"),
        text(fields, "postcode"),
        text(fields, "town"),
        text(fields, "region"),
        text(fields, "country"));
  }

  private static String text(Fields fields, String key) {
    return fields.optionalText(key).orElse("");
  }
}
