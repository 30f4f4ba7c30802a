package org.cupbeam.studio.seed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.random.RandomGenerator;

/** Invented people's names, of many places, none twice. */
final class Names {
    private static final List<String> GIVEN = words("""
            Ada Ansel Beata Bram Chidi Clara Cosima Dario Delia Edda Emre Fenna Florin Gita Goran Hanne Hugo Ida Imran
            Ines Jarek Jolanta Juno Kaj Katja Lale Leandro Linnea Łucja Malik Marit Matteo Mirjam Nadia Nils Noor Oda
            Orla Otis Paloma Pavel Quirin Rafe Rosa Selma Silas Sunniva Tamsin Teo Tilda Ulla Umberto Vera Viktor Wanda
            Wim Xenia Yara Yusuf Zoë""");
    private static final List<String> FAMILY = words("""
            Abara Achterberg Aldous Bellweather Birch Brandvold Cardew Castellan Dahlke Delacroix Draper Eastlake Eikeland
            Farrow Fiedler Garnett Goossens Halloran Haverkamp Ibsen Iturbe Jansky Joubert Kestrel Kowalczyk Lindqvist
            Lovelock Marchetti Mbeki-Lund Nakagawa Norling O'Dowd Okafor Ostrander Pemberton Pruitt Quayle Rasmussen
            Redfern Sandoval Skarsholt Tennant Thornquist Uberti Urquhart Vance Vasilenko Weatherby Wójcik Yilmaz
            Ziegler""");

    private Names() {
    }

    static List<String> some(int count, RandomGenerator random) {
        if (count > GIVEN.size() * FAMILY.size() / 2) {
            throw new IllegalArgumentException("no names for " + count + " people; ask for fewer");
        }
        Set<String> names = new LinkedHashSet<>();
        while (names.size() < count) {
            names.add(GIVEN.get(random.nextInt(GIVEN.size())) + " " + FAMILY.get(random.nextInt(FAMILY.size())));
        }
        return new ArrayList<>(names);
    }

    private static List<String> words(String text) {
        return Arrays.asList(text.split("\\s+"));
    }
}
