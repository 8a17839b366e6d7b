package withers.oracle;

import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Which columns of a source's files belong together, for a stirring hand: what is typed over
 * together, what may be left empty, and what is a day or a number.
 */
enum Layout {
  VENDLEMOUTH_PATIENTS(
      ',',
      "yyyy-MM-dd",
      "number Microchip",
      "second Second microchip",
      "person Client No|Client|Phone|E-mail|Address|Postcode|Town",
      "person Client|Phone|E-mail|Address|Postcode|Town",
      "details Address|Postcode|Town",
      "details Phone",
      "placeholder Client|Phone|E-mail|Address|Postcode|Town",
      "word Kind",
      "word Patient|Born",
      "day Last seen",
      "event Last seen",
      "event Implanted",
      "event Scanned|Scan result",
      "day Scanned",
      "word Reader",
      "event Died",
      "day Died"),
  PELLERWICK_PATIENTS(
      ';',
      "dd.MM.yyyy",
      "number Transponder",
      "second Other transponder",
      "person Owner ref|Surname|First name|Telephone|Mail|Street|Code|Place",
      "person Surname|First name|Telephone|Mail|Street|Code|Place",
      "details Telephone|Street|Code|Place",
      "details First name",
      "placeholder Surname|First name|Telephone|Mail|Street|Code|Place",
      "day Last visit",
      "event Last scan|Scan",
      "word Scan",
      "event Deceased on"),
  CORVELSEA_PATIENTS(
      '\t',
      "MM/dd/yyyy",
      "number CHIP",
      "second CHIP 2",
      "person OWNER ID|OWNER|TEL|EMAIL|STREET|POSTCODE|TOWN",
      "person OWNER|TEL|EMAIL|STREET|POSTCODE|TOWN",
      "details OWNER",
      "details TEL|EMAIL",
      "placeholder OWNER|TEL|EMAIL|STREET|POSTCODE|TOWN",
      "word SPECIES",
      "word ANIMAL|DOB",
      "day SEEN",
      "event CHIPPED",
      "event DECEASED"),
  NETHERSAY_PATIENTS(
      ',',
      "dd/MM/yyyy",
      "number Chip number",
      "person Keeper|Keeper's phone|House and street|Postcode|Village",
      "details Keeper's phone",
      "placeholder Keeper|Keeper's phone|House and street|Postcode|Village",
      "details House and street|Postcode|Village",
      "day Last here",
      "event Last here",
      "event Dead since"),
  GARROWNESS_STAYS(
      ',',
      "yyyy-MM-dd",
      "number microchip",
      "absent microchip",
      "event intake_date|intake_type|intake_from_org|intake_from|intake_phone",
      "event outcome_date|outcome_type|outcome_to_org|outcome_to|outcome_phone|outcome_email|"
          + "outcome_address|outcome_postcode|outcome_town",
      "person outcome_to|outcome_phone|outcome_email|outcome_address|outcome_postcode|outcome_town",
      "details outcome_to",
      "placeholder outcome_to|outcome_phone|outcome_email|outcome_address|outcome_postcode|outcome_town",
      "day outcome_date",
      "day intake_date"),
  HATHERSAND_MOVEMENTS(
      ';',
      "dd/MM/yyyy",
      "number Chip",
      "absent Chip",
      "person Family name|Given name|Phone|E-mail|Address|Postcode|Town",
      "placeholder Family name|Given name|Phone|E-mail|Address|Postcode|Town",
      "word What happened",
      "word Other shelter",
      "day Date",
      "day Date"),
  ULVERSCAR_STAYS(
      '\t',
      "MM/dd/yyyy",
      "number Chip",
      "event Arrived|How|From shelter|From whom",
      "event Left|Why|To shelter|To whom|Phone|Where|Postcode|Town",
      "person To whom|Phone|Where|Postcode|Town",
      "day Left"),
  TOLLBARROW_SALES(
      ';',
      "dd.MM.yyyy",
      "number Chip no.",
      "event Sold|Buyer|Buyer's phone|Buyer's mail|Street|Postcode|Town|Came back",
      "person Buyer|Buyer's phone|Buyer's mail|Street|Postcode|Town",
      "placeholder Buyer|Buyer's phone|Buyer's mail|Street|Postcode|Town",
      "event Came back",
      "day Sold"),
  CORVELSEA_SALES(
      '|',
      "yyyy-MM-dd",
      "number chip",
      "event sold_on|customer|first_name|last_name|phone|email|address|postcode|town|returned_on",
      "person customer|first_name|last_name|phone|email|address|postcode|town",
      "details phone",
      "placeholder first_name|last_name|phone|email|address|postcode|town",
      "event returned_on",
      "day sold_on"),
  COAST_REGISTER(
      ',',
      "yyyy-MM-dd",
      "number chip_number",
      "person contact_since|given_name|family_name|phone|email|address|postcode|town",
      "person given_name|family_name|phone|email|address|postcode|town",
      "details given_name|family_name",
      "details phone|address|postcode|town",
      "placeholder given_name|family_name|phone|email|address|postcode|town",
      "word species",
      "event contact_since",
      "event ended_on",
      "event ended_on|end_reason",
      "day contact_since"),
  NORTHERN_REGISTER(
      ';',
      "dd/MM/yyyy",
      "number Transponder number",
      "person Registered|Keeper|Keeper phone|Keeper e-mail|Keeper street|Keeper postcode|Keeper town",
      "person Keeper|Keeper phone|Keeper e-mail|Keeper street|Keeper postcode|Keeper town",
      "details Second keeper|Second keeper phone",
      "details Keeper phone",
      "placeholder Keeper|Keeper phone|Keeper e-mail|Keeper street|Keeper postcode|Keeper town",
      "event Registered",
      "event Cancelled",
      "day Registered"),
  INLAND_ACCOUNT(
      '\t',
      "MM/dd/yyyy",
      "number Chip",
      "person Owner updated|Owner|Owner phone|Owner email|Owner address|Owner postcode|Owner town",
      "day Owner updated"),
  BRACKENSAY_REGISTER(
      ',', "yyyy-MM-dd", "person since|keeper|phone|street|postcode|town", "day since"),
  SKARNHOLME_SUPPLY(
      ',', "yyyy-MM-dd", "word purchaser", "word prepaid", "event delivered", "day delivered"),
  LOST_AND_FOUND(
      ',',
      "dd.MM.yyyy",
      "number Chip",
      "word Type",
      "placeholder Reported by|Phone",
      "event With|Reported by|Phone",
      "event Gone home on",
      "day Date");

  /** Columns that are typed over together. */
  record Group(String kind, List<String> columns) {
    private static Group of(String text) {
      int space = text.indexOf(' ');
      return new Group(text.substring(0, space), List.of(text.substring(space + 1).split("\\|")));
    }
  }

  private final char delimiter;
  private final DateTimeFormatter days;
  private final List<Group> groups;

  Layout(char delimiter, String days, String... groups) {
    this.delimiter = delimiter;
    this.days = DateTimeFormatter.ofPattern(days, Locale.ROOT);
    this.groups = Arrays.stream(groups).map(Group::of).toList();
  }

  static Optional<Layout> of(String source) {
    return Arrays.stream(values()).filter(layout -> layout.id().equals(source)).findFirst();
  }

  String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  boolean sendsChanges() {
    return this == HATHERSAND_MOVEMENTS || this == LOST_AND_FOUND;
  }

  /** Where the key stands: first in all files. */
  int keyColumn() {
    return 0;
  }

  String numberColumn() {
    return groups.stream()
        .filter(group -> group.kind().equals("number"))
        .findFirst()
        .orElseThrow()
        .columns()
        .get(0);
  }

  char delimiter() {
    return delimiter;
  }

  DateTimeFormatter days() {
    return days;
  }

  List<Group> groups() {
    return groups;
  }
}
