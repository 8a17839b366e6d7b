package withers.demo;

import java.util.List;

/**
 * The names that people and streets of the coast have: common ones in unlikely company, and
 * invented streets.
 */
final class Names {

  static final List<String> GIVEN =
      list(
          """
          Abena, Adaeze, Ahmet, Aiko, Ajit, Alejandra, Amadou, Amina, Anneke, Anja, Aroha,
          Arturo, Ayşe, Beatriz, Birgit, Bjørn, Blessing, Bohdan, Branka, Caoimhe, Chidi,
          Chiara, Ciarán, Dalia, Danuta, Desta, Dimitra, Eero, Eilidh, Elif, Emeka, Enrique,
          Esi, Fatou, Farid, Femke, Gintarė, Giorgos, Gudrun, Hana, Haruto, Hemi, Hoa, Ifeoma,
          Ilse, Imre, Ines, Ioana, Ivo, Jaana, Javier, Jelena, João, Jiřina, Kaito, Kalinda,
          Katarzyna, Keola, Khalid, Kwame, Lan, Leilani, Linnea, Lucía, Ludmila, Łukasz,
          Mairead, Malika, Marit, Mehmet, Mei, Mihai, Mirela, Moana, Nadia, Naledi, Nils,
          Noor, Nuno, Oksana, Olumide, Oona, Padma, Pavel, Piotr, Priya, Rania, Ravi, Rhys,
          Rosa, Sanna, Samir, Seán, Sipho, Siobhan, Somchai, Sunniva, Tariq, Tatiana,
          Thandiwe, Thu, Tomasz, Ulrike, Valentina, Vikram, Wanjiru, Wei, Xiomara, Yael,
          Yusuf, Zainab, Zoran""");

  static final List<String> FAMILY =
      list(
          """
          Abebe, Acheampong, Adeyemi, Aguilar, Ahlberg, Akhtar, Andersson, Aydın, Balogun,
          Banerjee, Baptista, Bergqvist, Boateng, Borkowski, Brânză, Castellano, Chaudhry,
          Chukwu, Ćosić, Dahl, Delacroix, Diallo, Dvořák, Eklund, Ferreira, Figueroa,
          Fitzgibbon, Gallagher, Ghorbani, Gonçalves, Greenhalgh, Haddad, Haugen, Hernández,
          Horvat, Ilić, Inoue, Ivanenko, Jansen, Jaramillo, Kamau, Kaplan, Kavanagh, Keawe,
          Kowalczyk, Kruger, Kurosawa, Lefebvre, Lindqvist, Lungu, MacAskill, Mahlangu,
          Marinescu, Mbeki, Mensah, Mishra, Müller, Mwangi, Nakamura, Ngata, Nguyễn, Nilsen,
          Novák, Obi, O'Donnell, Okafor, Ortiz, Papadopoulou, Parata, Pereira, Petrović,
          Popescu, Quispe, Rahman, Raman, Rossi, Salazar, Schäfer, Shevchenko, Sithole,
          Sokolov, Søndergaard, Suzuki, Szabó, Takahashi, Tanaka, Tesfaye, Thapa, Torvald,
          Traoré, Tshabalala, Uzun, Valdez, Varga, Virtanen, Vukić, Wangari, Whaanga, Wójcik,
          Xu, Yamaguchi, Yıldız, Zając, Zhang, Zimmermann""");

  static final List<String> STREETS =
      list(
          """
          Anchor Steps, Barnacle Row, Beacon Rise, Bell Rope Lane, Bilge Street,
          Causeway Close, Chandler's Yard, Cockle Lane, Cormorant Walk, Drift Road,
          Driftwood Crescent, Ebb Street, Eelpot Lane, Ferry Hard, Fishwife's Stair,
          Gannet Way, Groyne Street, Gull Terrace, Harbour Wall, Hawser Lane, Herring Court,
          Kelp Lane, Kittiwake Drive, Lantern Hill, Lobster Pot Row, Marram Road, Mussel Bank,
          Net Loft Lane, Oyster Street, Pebble Walk, Pilot's Corner, Razorbill Road, Ropewalk,
          Salter's Gate, Samphire Street, Sandpiper Lane, Sea Holly Road, Shingle Street,
          Slipway Road, Spindrift Avenue, Storm Street, Tern Close, Thrift Lane,
          Tideline Road, Topsail Terrace, Turnstone Way, Undertow Street, Watchman's Row,
          Whelk Street, Wrack Lane""");

  private Names() {}

  private static List<String> list(String text) {
    return List.of(text.split(",\\s+"));
  }
}
