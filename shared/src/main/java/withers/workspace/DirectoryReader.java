package withers.workspace;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import withers.chip.NumberRange;
import withers.chip.RangeNotation;
import withers.contact.Contact;
import withers.id.OrganisationId;
import withers.organisation.Extra;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.organisation.PeriodDays;
import withers.organisation.Policy;
import withers.yaml.Fields;
import withers.yaml.Problems;
import withers.yaml.YamlMap;

/** Reads {@code organisations.yaml}; one reader for one file. */
final class DirectoryReader {
  private static final Pattern ADDRESS =
      Pattern.compile("[^\\s@<>,;:\"()]+@[^\\s@<>,;:\"()]+\\.[^\\s@<>,;:\"()]+");
  private static final OrganisationId NOBODY = new OrganisationId("nobody");

  private final Problems problems;
  private final Claims claims;

  DirectoryReader(Problems problems) {
    this.problems = problems;
    this.claims = new Claims(problems);
  }

  /** The organisations of the file; those with a mistake are left out. */
  List<Organisation> read(YamlMap file) {
    return Fields.read(
            file,
            problems,
            fields -> {
              fields.require("organisations");
              return fields.maps("organisations", this::organisation);
            })
        .orElse(List.of());
  }

  /** Ids that the file states, those of organisations with a mistake included. */
  Set<OrganisationId> ids() {
    return claims.ids();
  }

  private Organisation organisation(Fields fields) {
    OrganisationId id = fields.value("id", text -> claims.id(text, fields.place("id")), NOBODY);
    claims.names("name", fields);
    claims.names("aliases", fields);
    String name = fields.text("name");
    OrganisationKind kind = fields.choice("kind", OrganisationKind.class);
    return new Organisation(
        id,
        name,
        kind,
        fields.texts("aliases"),
        contact(fields, name),
        fields.optionalValue("mail", DirectoryReader::mail),
        fields.maps("carers", DirectoryReader::carer),
        Set.copyOf(fields.choices("policies", Policy.class)),
        registers(fields, kind),
        fields.map("periods", PeriodsReader::read).orElse(PeriodDays.NONE),
        Set.copyOf(fields.choices("also", Extra.class)));
  }

  private static List<NumberRange> registers(Fields fields, OrganisationKind kind) {
    List<NumberRange> ranges = fields.list("registers", RangeNotation::read);
    if (!ranges.isEmpty() && kind != OrganisationKind.REGISTRY) {
      fields.problem(
          "registers",
          "Expected number ranges of a registry only, but found some here",
          "remove them");
    }
    return ranges;
  }

  private static Contact carer(Fields fields) {
    Fields quiet = fields.confidential();
    return contact(quiet, quiet.text("name"));
  }

  private static Contact contact(Fields fields, String name) {
    return new Contact(
        name,
        "",
        "",
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

  static String mail(String text) {
    if (ADDRESS.matcher(text).matches()) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected an e-mail address such as lists@example.org, but found something else");
  }
}
