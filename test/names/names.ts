/** A hundred first names as people have them cut: with accents, apostrophes, two words and initials. In an order without a system. */

const list = `
Gwen, Tom, Bea, Zoë, Phil, Kit, Anna, Tim, Tina, Paul, Pat, Pia, Jürgen, José, André, Chloë, Loïc, Anaïs, Maïa, Åse, Björn, Søren,
Günther, Núria, Íris, Éloïse, Noël, Hélène, Renée, Amélie, Íñigo, Begoña, François, Joëlle, Zoé, Jörg, Käthe, Müge, Özil, Ülkü,
D’Arcy, O’Neill, Jo’el, Ka’ahu, N’Dea, Mary Ann, Anna Lena, Jean Paul, Eva Maria, Bo Li, Tim Tom, Rose May, Ana Sofía, J. R., A. B.,
T. S., M. K., Lily, Will, Bill, Ella, Hannah, Fiji, Jill, Milli, Otto, Bob, Abby, Eddie, Oscar, Victor, Yvonne, Wanda, Xenia,
Quinn, Hugo, Felix, Leo, Ida, Ruth, Theo, Grace, Max, Finn, Ava, Yara, Kai, Lars, Vera, Rufus, Effie, Toby, Viktor, Frida, Jasper,
Piet, Alfie, Kofi, Tilly, Ivy
`;

export const firstNames: readonly string[] = list.split(',').map((name) => name.trim().replace(/\s+/g, ' '));
