package withers.demo;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;

/** The people of the coast, each a pure function of the seed and a number. */
final class People {

  private static final List<String> GIVEN =
      List.of(
          "Abena",
          "Adaeze",
          "Ahmet",
          "Aiko",
          "Ajit",
          "Alejandra",
          "Amadou",
          "Amina",
          "Anneke",
          "Anja",
          "Aroha",
          "Arturo",
          "Ayşe",
          "Beatriz",
          "Birgit",
          "Bjørn",
          "Blessing",
          "Bohdan",
          "Branka",
          "Caoimhe",
          "Chidi",
          "Chiara",
          "Ciarán",
          "Dalia",
          "Danuta",
          "Desta",
          "Dimitra",
          "Eero",
          "Eilidh",
          "Elif",
          "Emeka",
          "Enrique",
          "Esi",
          "Fatou",
          "Farid",
          "Femke",
          "Gintarė",
          "Giorgos",
          "Gudrun",
          "Hana",
          "Haruto",
          "Hemi",
          "Hoa",
          "Ifeoma",
          "Ilse",
          "Imre",
          "Ines",
          "Ioana",
          "Ivo",
          "Jaana",
          "Javier",
          "Jelena",
          "João",
          "Jiřina",
          "Kaito",
          "Kalinda",
          "Katarzyna",
          "Keola",
          "Khalid",
          "Kwame",
          "Lan",
          "Leilani",
          "Linnea",
          "Lucía",
          "Ludmila",
          "Łukasz",
          "Mairead",
          "Malika",
          "Marit",
          "Mehmet",
          "Mei",
          "Mihai",
          "Mirela",
          "Moana",
          "Nadia",
          "Naledi",
          "Nils",
          "Noor",
          "Nuno",
          "Oksana",
          "Olumide",
          "Oona",
          "Padma",
          "Pavel",
          "Piotr",
          "Priya",
          "Rania",
          "Ravi",
          "Rhys",
          "Rosa",
          "Sanna",
          "Samir",
          "Seán",
          "Sipho",
          "Siobhan",
          "Somchai",
          "Sunniva",
          "Tariq",
          "Tatiana",
          "Thandiwe",
          "Thu",
          "Tomasz",
          "Ulrike",
          "Valentina",
          "Vikram",
          "Wanjiru",
          "Wei",
          "Xiomara",
          "Yael",
          "Yusuf",
          "Zainab",
          "Zoran");

  private static final List<String> FAMILY =
      List.of(
          "Abebe",
          "Acheampong",
          "Adeyemi",
          "Aguilar",
          "Ahlberg",
          "Akhtar",
          "Andersson",
          "Aydın",
          "Balogun",
          "Banerjee",
          "Baptista",
          "Bergqvist",
          "Boateng",
          "Borkowski",
          "Brânză",
          "Castellano",
          "Chaudhry",
          "Chukwu",
          "Ćosić",
          "Dahl",
          "Delacroix",
          "Diallo",
          "Dvořák",
          "Eklund",
          "Ferreira",
          "Figueroa",
          "Fitzgibbon",
          "Gallagher",
          "Ghorbani",
          "Gonçalves",
          "Greenhalgh",
          "Haddad",
          "Haugen",
          "Hernández",
          "Horvat",
          "Ilić",
          "Inoue",
          "Ivanenko",
          "Jansen",
          "Jaramillo",
          "Kamau",
          "Kaplan",
          "Kavanagh",
          "Keawe",
          "Kowalczyk",
          "Kruger",
          "Kurosawa",
          "Lefebvre",
          "Lindqvist",
          "Lungu",
          "MacAskill",
          "Mahlangu",
          "Marinescu",
          "Mbeki",
          "Mensah",
          "Mishra",
          "Müller",
          "Mwangi",
          "Nakamura",
          "Ngata",
          "Nguyễn",
          "Nilsen",
          "Novák",
          "Obi",
          "O'Donnell",
          "Okafor",
          "Ortiz",
          "Papadopoulou",
          "Parata",
          "Pereira",
          "Petrović",
          "Popescu",
          "Quispe",
          "Rahman",
          "Raman",
          "Rossi",
          "Salazar",
          "Schäfer",
          "Shevchenko",
          "Sithole",
          "Sokolov",
          "Søndergaard",
          "Suzuki",
          "Szabó",
          "Takahashi",
          "Tanaka",
          "Tesfaye",
          "Thapa",
          "Torvald",
          "Traoré",
          "Tshabalala",
          "Uzun",
          "Valdez",
          "Varga",
          "Virtanen",
          "Vukić",
          "Wangari",
          "Whaanga",
          "Wójcik",
          "Xu",
          "Yamaguchi",
          "Yıldız",
          "Zając",
          "Zhang",
          "Zimmermann");

  private static final List<String> STREETS =
      List.of(
          "Anchor Steps",
          "Barnacle Row",
          "Beacon Rise",
          "Bell Rope Lane",
          "Bilge Street",
          "Causeway Close",
          "Chandler's Yard",
          "Cockle Lane",
          "Cormorant Walk",
          "Drift Road",
          "Driftwood Crescent",
          "Ebb Street",
          "Eelpot Lane",
          "Ferry Hard",
          "Fishwife's Stair",
          "Gannet Way",
          "Groyne Street",
          "Gull Terrace",
          "Harbour Wall",
          "Hawser Lane",
          "Herring Court",
          "Kelp Lane",
          "Kittiwake Drive",
          "Lantern Hill",
          "Lobster Pot Row",
          "Marram Road",
          "Mussel Bank",
          "Net Loft Lane",
          "Oyster Street",
          "Pebble Walk",
          "Pilot's Corner",
          "Razorbill Road",
          "Ropewalk",
          "Salter's Gate",
          "Samphire Street",
          "Sandpiper Lane",
          "Sea Holly Road",
          "Shingle Street",
          "Slipway Road",
          "Spindrift Avenue",
          "Storm Street",
          "Tern Close",
          "Thrift Lane",
          "Tideline Road",
          "Topsail Terrace",
          "Turnstone Way",
          "Undertow Street",
          "Watchman's Row",
          "Whelk Street",
          "Wrack Lane");

  /** Town and the letters of its postcode, both invented. */
  private record Town(String name, String letters) {}

  private static final List<Town> TOWNS =
      List.of(
          new Town("Vendlemouth", "VM"),
          new Town("Vendlemouth", "VM"),
          new Town("Vendlemouth", "VM"),
          new Town("Corvelsea", "CS"),
          new Town("Corvelsea", "CS"),
          new Town("Pellerwick", "PW"),
          new Town("Pellerwick", "PW"),
          new Town("Garrowness", "GN"),
          new Town("Hathersand", "HS"),
          new Town("Skarnholme", "SK"),
          new Town("Ulverscar", "UV"),
          new Town("Nethersay", "NS"),
          new Town("Brackensay", "BR"),
          new Town("Tollbarrow", "TB"));

  /**
   * Area codes of the North American plan; 555-0100 to 555-0199 is reserved for fiction in each.
   */
  private static final List<Integer> AREAS =
      List.of(
          201, 202, 203, 205, 206, 207, 208, 209, 210, 212, 213, 214, 215, 216, 217, 218, 219, 224,
          225, 228, 229, 231, 234, 239, 240, 248, 251, 252, 253, 254, 256, 260, 262, 267, 269, 270,
          276, 281, 301, 302, 303, 304, 305, 307, 308, 309, 310, 312, 313, 314, 315, 316, 317, 318,
          319, 320, 321, 323, 325, 330, 334, 336, 337, 339, 347, 351, 352, 360, 361, 386, 401, 402,
          404, 405, 406, 407, 408, 409, 410, 412);

  private static final int FICTIONAL_LINES = 100;

  private final long seed;

  People(long seed) {
    this.seed = seed;
  }

  /** The person of that number. */
  Person person(int number) {
    Dice dice = Dice.of(seed, "person", number);
    String given = dice.pick(GIVEN);
    String family = dice.pick(FAMILY);
    Town town = dice.pick(TOWNS);
    return new Person(
        Integer.toString(number),
        given,
        family,
        phone(2 * number),
        email(given, family, number),
        (1 + dice.below(140)) + " " + dice.pick(STREETS),
        town.letters + " " + (100 + dice.below(800)),
        town.name);
  }

  /**
   * Who shares the person's home and phone, under another given name, perhaps another family name.
   */
  Person partner(Person person) {
    Dice dice = Dice.of(seed, "partner", person.id().hashCode());
    String given = dice.pick(GIVEN.stream().filter(name -> !name.equals(person.given())).toList());
    String family = dice.permille(500) ? person.family() : dice.pick(FAMILY);
    return person.named(given, family).withEmail("");
  }

  /** Where the person lives after a move, with a new phone. */
  Person moved(Person person) {
    Person elsewhere = person(1_000_000 + Integer.parseInt(person.id()));
    return person.movedTo(elsewhere).withPhone(phone(2 * Integer.parseInt(person.id()) + 1));
  }

  /** A number that rings nowhere: +1 AAA 555 01xx. */
  static String phone(int number) {
    int area = AREAS.get(number / FICTIONAL_LINES % AREAS.size());
    return "%d-555-01%02d".formatted(area, number % FICTIONAL_LINES);
  }

  private static String email(String given, String family, int number) {
    String plain = Normalizer.normalize(given + "." + family, Normalizer.Form.NFD);
    String ascii = plain.replaceAll("[^A-Za-z.]", "").toLowerCase(Locale.ROOT);
    return ascii + number + "@example.org";
  }
}
