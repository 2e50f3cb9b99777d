/**
 * A hundred first names as people have them cut. Most are plain; among them are accents, apostrophes, two words, initials, and
 * what is hard to join: an arm over a small letter, a mark beside a capital, stems side by side. In an order without a system.
 */

const list = `
Gwen, Tom, Bea, Zoë, Phil, Kit, Anna, Tim, Emma, Paul, Mary Ann, Noah, Jürgen, Oliver, Pat, Olivia, José, Sophie, Lucas, D’Arcy,
Hannah, Ben, Chloë, Daniel, Ruth, Pia, Peter, Clara, Loïc, Max, Theo, Martha, Hugo, Grace, J. R., Walter, Alice, Frank, Björn,
Nina, Anna Lena, Victor, Paula, Simon, Anaïs, Helen, Arthur, Julia, Edward, O’Neill, Laura, Henry, Maria, Oscar, Åse, Robert, Sarah,
Tina, Thomas, Vera, Jean Paul, William, Yvonne, Adam, Hélène, Flora, Heidi, Jasper, Karl, A. B., Linda, Søren, Monica, Nathan, Otto,
Jo’el, Patrick, Rachel, Stefan, Eva Maria, Teresa, Núria, Wendy, Amelia, Bruno, David, Esther, Felix, François, Gabriel, Ingrid, Lily,
Tilly, Leo, Rose May, Ida, Günther, Ka’ahu, Frida, T. S.
`;

export const firstNames: readonly string[] = list.split(',').map((name) => name.trim().replace(/\s+/g, ' '));
