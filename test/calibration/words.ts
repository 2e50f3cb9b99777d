/** What people have cut: first names, what grows in a seed library, capitals, two words. In an order without a system. */

const list = `
Gwen, Sorrel, Rosalind, TOMATO, Bea, Yarrow, Phil, Chervil, Anna, Pak choi, Matthew, Kale, Zoë, Lovage, BASIL, Oliver, Fennel, Hannah,
Borage, Emma, Winter rye, Tom, Marigold, Lucas, Parsnip, Elena, Radish, Kit, Aubergine, SOPHIE, Daniel, Quinoa, Ruth, Cabbage, Peter,
Rhubarb, Clara, Mint, Benjamin, Oregano, Ida, Sage, Theo, Pumpkin, Martha, Leek, Hugo, Squash, Grace, Anise, Walter, Coriander, Mary,
Sweet pea, George, Thyme, Alice, Onion, Frank, Celery, Nina, Spinach, Victor, Garlic, Paula, BEANS, Simon, Lettuce, Helen, Chard,
Arthur, Beetroot, Julia, Dill, Edward, Carrot, Laura, Cress, Henry, Lavender, Maria, Nasturtium, Oscar, Rosemary, Pia, Sunflower,
Robert, Tansy, Sarah, Endive, Thomas, Arugula, Ursula, Hyssop, Vera, Savory, William, Salsify, Xenia, Comfrey, Yvonne, Angelica,
Zara, Turnip, Adam, Gourd, Beatrice, Maize, Conrad, Barley, Doris, Millet, Ernest, Sesame, Flora, Linseed, Gustav, Poppy, Heidi,
Foxglove, Isaac, Cosmos, Jasper, Zinnia, Karl, Dahlia, Linda, Aster, Monica, Lupin, Nathan, Violet, Otto, Pansy, Patrick, Iris,
Quentin, Lily, Rachel, Tulip, Stefan, Crocus, Teresa, Daffodil, Ulrich, Primrose, Valerie, Campion, Wendy, Cornflower, Amelia,
Red clover, Bruno, Vetch, Camilla, Alfalfa, David, Buckwheat, Esther, Mustard, Felix, Sweetcorn, Gabriel, Cucumber, Harriet, Melon,
Ingrid, Pepper, Jonathan, Chilli, Katrin, Courgette, Leonard, Swede, Madeleine, Broccoli, Norbert, Kohlrabi, Olga, Cauliflower,
Pauline, Sprouts, Raphael, Artichoke, Sabine, Asparagus, Tobias, Okra, Vincent, Lentil, Wanda, Chickpea, Andrew, Broad bean, Barbara,
Peas, Charlotte, Soya, Dominic, Runner bean, Elizabeth, Catnip, Fiona, Chamomile, Gerald, Feverfew, Hilda, Echinacea, MARGARET, Valerian
`;

export const calibrationWords: readonly string[] = list.split(',').map((word) => word.trim());
